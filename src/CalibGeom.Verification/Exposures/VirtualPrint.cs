using CalibGeom.Dose;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Exposures;

/// <summary>
/// Readings of a print that never was: sizes from the light model, columns by a survival law, fits by the thresholds, with the errors of a
/// caliper where a seed is given. Immutable and safe to share between threads.
/// </summary>
/// <param name="made">The test object.</param>
/// <param name="printed">What light makes of it.</param>
/// <param name="survival">Which columns come off the plate whole.</param>
/// <param name="lowest">What happens next to the plate; no squeeze and usual base layers when null.</param>
/// <exception cref="ArgumentException">The light cures nothing.</exception>
public sealed class VirtualPrint(TestObject made, PrintedObject printed, SurvivalLaw survival, LowestLayers? lowest = null)
{
    private const double FormError = 0.006, Step = 0.01;
    private readonly PrintedObject printed = printed.Growth is null
        ? throw new ArgumentException("The light does not reach the critical dose anywhere, so nothing prints. Expose longer, or check irradiance and critical dose.", nameof(printed))
        : printed;
    private readonly LowestLayers bottom = lowest ?? new LowestLayers();

    /// <summary>The readings a person would write down.</summary>
    /// <param name="seed">
    /// Null for exact sizes and the likelier fate of each column. A seed gives errors: one bias a jaw, repeatability, form and rounding to
    /// 0.01 mm as of <see cref="Instrument.Caliper"/>; columns by chance.
    /// </param>
    /// <param name="repeats">How often each size is read, 1 to 20. Default 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of repeats is out of range.</exception>
    public IReadOnlyList<Reading> Read(ulong? seed = null, int repeats = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(repeats, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(repeats, 20);
        SeededRandom? random = seed is { } s ? new SeededRandom(s) : null;
        double outside = Error(random, Instrument.DefaultOutsideError), inside = Error(random, Instrument.DefaultInsideError), depth = Error(random, Instrument.DefaultDepthError);
        var readings = new List<Reading>();
        foreach (PrintedSize size in printed.Sizes().Select(Vertical).Where(s => s.Value > Step && !s.Feature.StartsWith("column", StringComparison.Ordinal)))
        {
            double bias = size.Feature.Contains(".inside.", StringComparison.Ordinal) ? inside : size.Feature.EndsWith(".height", StringComparison.Ordinal) ? depth : outside;
            double form = Error(random, FormError);
            for (int i = 0; i < repeats; i++)
            {
                double value = size.Value!.Value + bias + form + Error(random, Instrument.DefaultRepeatability);
                readings.Add(Reading.Size(size.Feature, random is null ? Math.Round(value, 6) : Math.Round(value / Step) * Step));
            }
        }
        readings.AddRange(Fits(random));
        readings.AddRange(Columns(random));
        if (made.Spec.Slots is not null) readings.Add(Reading.Count("slots.open", printed.OpenSlots()));
        if (made.Features.Any(f => f.Id == "squeeze.open")) readings.Add(Reading.Count("squeeze.open", bottom.OpenSlots(made.Spec.Squeeze!, printed.Light)));
        return readings;
    }

    // Light through the roof lowers tunnels and slots; squeezing takes from what stands on the plate.
    private PrintedSize Vertical(PrintedSize size)
    {
        double taken = size.Feature switch
        {
            "plinth.thickness" => bottom.Squeeze,
            "squeeze.height" => Math.Max(0, bottom.PrintThrough(made.Spec.Squeeze!, made.Spec.Squeeze!.Slots, printed.Light)),
            _ when size.Feature.StartsWith("slot", StringComparison.Ordinal) => Math.Max(0, printed.Light.PrintThrough()),
            _ => 0,
        };
        return size with { Value = size.Value - taken };
    }

    private IEnumerable<Reading> Fits(SeededRandom? random)
    {
        FitThresholds limits = FitThresholds.Default;
        IReadOnlyList<(double? X, double? Y)> clearances = printed.Clearances();
        for (int j = 0; j < clearances.Count; j++)
        {
            if (clearances[j] is not ({ } x, { } y)) continue;
            double error = Error(random, limits.Deviation), tighter = Math.Min(x, y) + error, mean = (x + y) / 2 + error;
            FeltFit fit = tighter < limits.Binds ? FeltFit.Refuses : mean < limits.Slides ? FeltFit.Binds : mean < limits.Rattles ? FeltFit.Slides : FeltFit.Rattles;
            yield return Reading.Felt($"joint{j + 1}.fit", fit);
        }
    }

    private IEnumerable<Reading> Columns(SeededRandom? random)
    {
        foreach (ColumnPlan column in made.Columns)
        {
            double head = column.Diameter * Math.Sqrt(column.LoadRatio);
            double chance = survival.Chance(printed.Blur, column.Diameter, printed.Light.WallRatio(), head);
            bool stands = random is null ? chance >= 0.5 : random.Uniform() < chance;
            yield return Reading.Stood($"column{column.Number}.stood", stands ? ColumnStage.Cure : ColumnStage.Lost);
        }
    }

    private static double Error(SeededRandom? random, double deviation) => random is null ? 0 : deviation * random.Normal();
}
