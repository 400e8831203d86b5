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
    private const double FormError = 0.006,
        Step = 0.01,
        SharedVariance = 0.8;
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
    /// <param name="caliperSeed">The person with their caliper: its biases, and where they draw the limits between the
    /// words of a fit. The same for all prints of one session. Default 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of repeats is out of range.</exception>
    public IReadOnlyList<Reading> Read(ulong? seed = null, int repeats = 1, ulong caliperSeed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(repeats, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(repeats, 20);
        SeededRandom? random = seed is { } s ? new SeededRandom(s) : null;
        SeededRandom? caliper = seed is null ? null : new SeededRandom(caliperSeed);
        double outside = Error(caliper, Instrument.DefaultOutsideError),
            inside = Error(caliper, Instrument.DefaultInsideError),
            depth = Error(caliper, Instrument.DefaultDepthError),
            person = Error(caliper, FitThresholds.Default.Deviation * Math.Sqrt(SharedVariance));
        var readings = new List<Reading>();
        foreach (
            PrintedSize size in printed
                .Sizes()
                .Select(Squeezed)
                .Where(s => s.Value > Step && s.Feature.Part != KnownFeatures.Column && !TooLow(s))
        )
        {
            double bias =
                printed.Made.Features.Find(size.Feature)?.Faces == FaceKind.Inside ? inside
                : size.Feature.Size == KnownFeatures.Height ? depth
                : outside;
            double form = Error(random, FormError);
            for (int i = 0; i < repeats; i++)
            {
                double value = size.Value!.Value + bias + form + Error(random, Instrument.DefaultRepeatability);
                readings.Add(
                    Reading.Size(
                        size.Feature,
                        random is null ? Math.Round(value, 6) : Math.Max(Step, Math.Round(value / Step) * Step)
                    )
                );
            }
        }
        readings.AddRange(Fits(random, person));
        readings.AddRange(Columns(random));
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

    private IEnumerable<Reading> Fits(SeededRandom? random, double person)
    {
        FitThresholds limits = FitThresholds.Default;
        foreach (IGrouping<FeatureId, PrintedClearance> fitted in printed.Clearances().GroupBy(c => c.Fit))
        {
            double[] gaps = [.. fitted.Select(c => c.Value).OfType<double>()];
            if (gaps.Length < fitted.Count())
                continue;
            double error = person + Error(random, limits.Deviation * Math.Sqrt(1 - SharedVariance)),
                tighter = gaps.Min() + error,
                mean = gaps.Average() + error;
            FeltFit fit =
                tighter < limits.Binds ? FeltFit.Refuses
                : mean < limits.Slides ? FeltFit.Binds
                : mean < limits.Rattles ? FeltFit.Slides
                : FeltFit.Rattles;
            yield return Reading.Felt(fitted.Key, fit);
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

    private static double Error(SeededRandom? random, double deviation) =>
        random is null ? 0 : deviation * random.Normal();
}
