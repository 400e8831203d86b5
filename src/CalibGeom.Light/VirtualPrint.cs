using CalibGeom.TestObjects;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Light;

/// <summary>
/// Readings of a print that never was: sizes from the light model, columns by a survival law, fits by the thresholds,
/// with the errors of a caliper where a seed is given. Immutable and safe to share between threads.
/// </summary>
public sealed class VirtualPrint
{
    // Lower than this nobody reads a size.
    private const double LeastRead = 0.01;
    private readonly PredictedPrint printed;
    private readonly SurvivalLaw survival;
    private readonly double squeeze;

    /// <summary>A print.</summary>
    /// <param name="printed">What light makes of the test object.</param>
    /// <param name="survival">Which columns come off the plate whole.</param>
    /// <param name="squeeze"> Height that the lowest layers lose because the first ones start too close to the plate,
    /// in mm, 0 to 10. Default 0. An assumption of ours, without a source: the slots of the squeeze tab give way one
    /// after the other from the plate upward, each losing what print-through left of it, and the plinth gets thinner by
    /// as much. </param>
    /// <exception cref="ArgumentException">The squeeze is out of range, or the light cures nothing.</exception>
    public VirtualPrint(PredictedPrint printed, SurvivalLaw survival, double squeeze = 0)
    {
        ArgumentNullException.ThrowIfNull(printed);
        ArgumentNullException.ThrowIfNull(survival);
        this.printed =
            printed.Light.WallRatio() > 1
                ? printed
                : throw new ArgumentException(
                    "The light does not reach the critical dose anywhere, so nothing prints. Expose longer, or "
                        + "check irradiance and critical dose.",
                    nameof(printed)
                );
        this.survival = survival;
        this.squeeze = Require.Within(squeeze, 0, 10, "squeeze of the lowest layers", "mm", nameof(squeeze));
    }

    /// <summary>The readings a person would write down.</summary>
    /// <param name="seed"> Null for exact sizes and the likelier fate of each column. A seed gives errors: one bias a
    /// jaw, repeatability, form and rounding to 0.01 mm as of <see cref="Instrument.Caliper"/>; columns by chance.
    /// </param>
    /// <param name="repeats">How often each size is read, 1 to 20. Default 1.</param>
    /// <param name="caliperSeed">The person with their caliper (<see cref="SimulatedCaliper"/>), the same for all prints
    /// of one session. Default 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of repeats is out of range.</exception>
    public IReadOnlyList<Reading> Read(ulong? seed = null, int repeats = 1, ulong caliperSeed = 1) =>
        seed is { } s
            ? Read(new SimulatedCaliper(caliperSeed), s, repeats)
            : Read(SimulatedCaliper.Faultless, 0, repeats);

    /// <summary>The readings that a person with a caliper writes down.</summary>
    /// <param name="caliper">The person with their caliper. One that is faultless reads exact sizes, and sees the
    /// likelier fate of each column.</param>
    /// <param name="seed">What scatter, form and the fate of columns are drawn from.</param>
    /// <param name="repeats">How often each size is read, 1 to 20. Default 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of repeats is out of range.</exception>
    public IReadOnlyList<Reading> Read(SimulatedCaliper caliper, ulong seed, int repeats = 1)
    {
        ArgumentNullException.ThrowIfNull(caliper);
        ArgumentOutOfRangeException.ThrowIfLessThan(repeats, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(repeats, 20);
        var random = new SeededRandom(seed);
        var readings = new List<Reading>();
        foreach (
            PrintedSize size in printed
                .Sizes()
                .Select(Squeezed)
                .Where(s => s.Value > LeastRead && s.Feature.Part != KnownFeatures.Column && !TooLow(s))
        )
        {
            FaceKind faces = printed.Made.Features.Find(size.Feature)?.Faces ?? FaceKind.None;
            readings.AddRange(caliper.Read(size.Feature, faces, size.Value!.Value, random, repeats));
        }
        readings.AddRange(Fits(caliper, random));
        readings.AddRange(Columns(caliper.IsFaultless ? null : random));
        if (printed.Made.Features.Find(KnownFeatures.SlotsOpen) is not null)
            readings.Add(Reading.Count(KnownFeatures.SlotsOpen, printed.OpenSlots()));
        if (printed.Made.Features.Find(KnownFeatures.SqueezeOpen) is not null)
            readings.Add(Reading.Count(KnownFeatures.SqueezeOpen, OpenAfterSqueeze()));
        return readings;
    }

    private static bool TooLow(PrintedSize size) =>
        size.Feature.Part == KnownFeatures.Slot && size.Value < PredictedPrint.LeastSeen;

    private PrintedSize Squeezed(PrintedSize size) =>
        size.Feature == KnownFeatures.PlinthThickness ? size with { Value = size.Value - squeeze } : size;

    private int OpenAfterSqueeze()
    {
        double toLose = squeeze;
        int open = 0;
        foreach (double gap in printed.SqueezeGaps())
        {
            if (gap > toLose)
                open++;
            toLose = Math.Max(0, toLose - gap);
        }
        return open;
    }

    private IEnumerable<Reading> Fits(SimulatedCaliper caliper, SeededRandom random)
    {
        foreach (IGrouping<FeatureId, PrintedClearance> fitted in printed.Clearances().GroupBy(c => c.Fit))
        {
            double[] gaps = [.. fitted.Select(c => c.Value).OfType<double>()];
            if (gaps.Length == fitted.Count())
                yield return caliper.Feel(fitted.Key, gaps, random);
        }
    }

    private IEnumerable<Reading> Columns(SeededRandom? random)
    {
        foreach (ColumnPlan column in printed.Made.Columns)
        {
            double head = column.Diameter * Math.Sqrt(column.LoadRatio);
            double chance = survival.Chance(printed.AxisRatio(column), column.Diameter, head);
            bool stands = random is null ? chance >= 0.5 : random.Uniform() < chance;
            yield return Reading.Stood(
                KnownFeatures.ColumnStood(column.Number),
                stands ? ColumnStage.Cure : ColumnStage.Lost
            );
        }
    }
}
