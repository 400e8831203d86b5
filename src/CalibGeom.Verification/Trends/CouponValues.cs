using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Trends;

/// <summary>From a print in the log to what it says of the process.</summary>
public static class CouponValues
{
    // Where the words of a felt fit lie, mm of clearance; the outer two are taken as 0.03 and 0.05 wide.
    private static readonly Dictionary<FeltFit, (double Low, double High)> Felt = new()
    {
        [FeltFit.Refuses] = (-0.03, 0),
        [FeltFit.Binds] = (0, 0.02),
        [FeltFit.Slides] = (0.02, 0.07),
        [FeltFit.Rattles] = (0.07, 0.12),
    };

    private const double FeltThreshold = 0.010;

    // Roughness of a tunnel's roof and the judgement of what is open, mm: our estimate, as in tune.
    private const double SlotJudgement = 0.015;

    // How steep survival is: a standard deviation of 0.18 in ln(diameter), a slope of 10 in the logistic law.
    private const double ColumnSpread = 0.18;
    private const double Tenth = 1.258925411794167;

    /// <summary>
    /// The values of a print: growth along X and Y (by caliper, else by feel), print-through from the comb and from the
    /// bridge, and the thinnest column. A comb that is all open or all closed, and columns of which none or all were
    /// lost, only bound what they measure: they count as one more step beyond, and <paramref name="bounded"/> tells
    /// which.
    /// </summary>
    /// <param name="trial">The print.</param>
    /// <param name="bounded">The gauges that are only bounded by what was counted.</param>
    /// <exception cref="InputException">A reading of the bridge is no thickness.</exception>
    public static IReadOnlyList<GaugeValue> Of(Trial trial, out IReadOnlySet<Gauge> bounded)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var values = new List<GaugeValue>();
        var bounds = new HashSet<Gauge>();
        string place = Where(trial);
        Add(values, trial.GrowthX, "x", trial, place);
        Add(values, trial.GrowthY, "y", trial, place);
        if (values.Count == 0)
            values.AddRange(ByFeel(trial, place));
        if (trial.Slots is { } slots && Through(slots, place, bounds) is { } through)
            values.Add(through);
        if (BridgeReading.Of(trial) is { } bridge)
            values.Add(
                new GaugeValue(
                    Gauge.PrintThrough,
                    $"bridge|{bridge.Instrument}|{place}",
                    bridge.Value,
                    bridge.Uncertainty,
                    $"bridge|{bridge.Instrument}"
                )
            );
        if (trial.Columns.Count > 0)
            values.Add(Limit(trial.Columns, place, bounds));
        bounded = bounds;
        return values;
    }

    private static string Where(Trial trial) =>
        FormattableString.Invariant(
            $"{trial.Digest}|{(trial.Place is { } p ? $"{Math.Round(p.X)}/{Math.Round(p.Y)}/{p.Turn}" : "")}"
        );

    private static void Add(List<GaugeValue> values, GrowthReading? growth, string axis, Trial trial, string place)
    {
        if (growth is not null)
            values.Add(
                new GaugeValue(
                    Gauge.Growth,
                    $"{axis}|{trial.Instrument}|{place}",
                    growth.Value - trial.Settings.EdgeOffset,
                    Math.Max(0.0005, growth.Uncertainty),
                    $"{axis}|{trial.Instrument}"
                )
            );
    }

    private static IEnumerable<GaugeValue> ByFeel(Trial trial, string place)
    {
        foreach (JointOutcome joint in trial.Joints)
            if (joint.Fit is { } fit)
            {
                (double low, double high) = Felt[fit];
                double designed = (joint.Designed + joint.DesignedY) / 2,
                    width = (high - low) / 2;
                yield return new GaugeValue(
                    Gauge.Growth,
                    $"felt|{joint.Id}|{place}",
                    (designed - (low + high) / 2) / 2 - trial.Settings.EdgeOffset,
                    Math.Sqrt(width * width / 12 + FeltThreshold * FeltThreshold / 4)
                )
                {
                    Felt = true,
                };
            }
    }

    private static GaugeValue? Through(SlotOutcome slots, string place, HashSet<Gauge> bounds)
    {
        double low = slots.HighestClosed,
            high = slots.LowestOpen;
        if (double.IsInfinity(low))
            (low, _) = (high / Tenth, bounds.Add(Gauge.PrintThrough));
        else if (double.IsInfinity(high))
            (high, _) = (low * Tenth, bounds.Add(Gauge.PrintThrough));
        string heights = string.Join(
            '/',
            slots.Heights.Select(h => h.ToString("R", System.Globalization.CultureInfo.InvariantCulture))
        );
        return new GaugeValue(
            Gauge.PrintThrough,
            FormattableString.Invariant($"z|{heights}|{place}"),
            (low + high) / 2,
            (high - low) / Math.Sqrt(12),
            "z"
        )
        {
            Counted = true,
        };
    }

    /// <summary>
    /// What combs counted one after the other say. A comb that counts as the one before says no more than that: where
    /// in the step the truth lies is the same unknown, and moves unseen. One that counts one slot more or less says
    /// that the truth has just passed the height between, which is known better than where in a step it lies.
    /// </summary>
    /// <param name="before">The value of the last comb that counted, or null.</param>
    /// <param name="value">The value of a comb in the middle of its step.</param>
    internal static GaugeValue? After(GaugeValue? before, GaugeValue value)
    {
        if (before is null || before.Series != value.Series)
            return value;
        double half = value.Uncertainty * Math.Sqrt(12) / 2,
            halfBefore = before.Uncertainty * Math.Sqrt(12) / 2,
            apart = value.Value - before.Value;
        if (Math.Abs(apart) < 1e-9)
            return null;
        bool neighbours = Math.Abs(Math.Abs(apart) - half - halfBefore) < 1e-9;
        return neighbours
            ? new GaugeValue(value.Gauge, value.Series, value.Value - Math.Sign(apart) * half, SlotJudgement, value.Kin)
            {
                Counted = true,
            }
            : value;
    }

    /// <summary>
    /// Spearman and Kaerber's estimate: half a step below the thinnest, and a step more for every diameter that was
    /// lost, by the share of its columns.
    /// </summary>
    private static GaugeValue Limit(IReadOnlyList<ColumnOutcome> columns, string place, HashSet<Gauge> bounds)
    {
        var levels = columns.GroupBy(c => c.Diameter).OrderBy(g => g.Key).ToArray();
        double step =
            levels.Length > 1 ? Math.Log(levels[^1].Key / levels[0].Key) / (levels.Length - 1) : Math.Log(Tenth) / 2;
        double lost = levels.Sum(g => (double)g.Count(c => !c.Printed) / g.Count());
        if (columns.All(c => c.Printed) || columns.All(c => !c.Printed))
            bounds.Add(Gauge.Columns);
        double each = columns.Count / (double)levels.Length;
        return new GaugeValue(
            Gauge.Columns,
            $"c|{place}",
            Math.Log(levels[0].Key) + step * (lost - 0.5),
            Math.Sqrt(ColumnSpread * step / (1.77 * each) + step * step / 12),
            "c"
        )
        {
            Counted = true,
        };
    }
}
