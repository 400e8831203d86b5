using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning.Policy;

/// <summary>
/// How much light the resin needs and how much is allowed. Needed: one exposure cures the least number of layers, and
/// the wanted column stands, or, where none is wanted, more light no longer saves columns. Allowed: print-through and
/// print time. What is needed is allowed.
/// </summary>
internal sealed class LightNeed
{
    // A column is said to stand when nine of ten print.
    internal const double Stands = 0.9;

    // Too little light is rather so than not; light goes down on purpose only where enough is sure. What is too deep
    // stops at less than what set it going (TuneOptions.Probability).
    private const double Even = 0.5,
        Doubtful = 0.65,
        Surely = 0.985;
    private readonly Trial last;
    private readonly PrintThroughResponse? light;
    private readonly ColumnSurvival? columns;
    private readonly TuneOptions options;
    private readonly double layer;

    internal LightNeed(
        IReadOnlyList<Trial> trials,
        PrintThroughResponse? light,
        ColumnSurvival? columns,
        TuneOptions options
    )
    {
        last = trials[^1];
        layer = last.Conditions.Layer;
        this.light = light is { Known: true } or { Quoted: true } ? light : null;
        this.columns = columns;
        this.options = options;
        double first = trials[0].Settings.Time;
        Trial cycle = trials[0];
        double each = first + cycle.Settings.Rest + cycle.Cycle.Lift;
        InTime = Math.Min(options.MostTime, Math.Max(first + options.MostSlower * each, last.Settings.Time));
    }

    /// <summary>The exposure that print time allows, s.</summary>
    internal double InTime { get; }

    /// <summary>
    /// The exposure at which print-through reaches its limit, s; that of the last print where its comb is closed beyond
    /// that limit, which tells no depth; infinite without a comb or a bridge that tells.
    /// </summary>
    internal double InDepth =>
        light?.TimeFor(options.MostPrintThrough)
        ?? (
            last.Slots is { Open: 0 } closed && closed.HighestClosed >= options.MostPrintThrough
                ? last.Settings.Time
                : double.PositiveInfinity
        );

    /// <summary>Whether the last print was probably beyond the limit of print-through.</summary>
    internal bool TooDeep =>
        light is not null && light.ChanceBeyond(last.Settings.Time, options.MostPrintThrough) >= options.Probability;

    /// <summary>How likely one exposure cures too little, from combs, bridges or a quoted curve alone.</summary>
    internal bool TooFewLayers(double time) =>
        light is { } l && l.ChanceOfLayers(time, layer, options.LeastLayers) < Even;

    internal bool ColumnFalls(double time) =>
        options.WantedColumn is { } wanted && columns is { } c && c.Probability(wanted, time) < Stands;

    /// <summary>Whether more light would still save columns, none being wanted.</summary>
    internal bool ColumnsGain =>
        options.WantedColumn is null
        && columns is { Lost: > 0 } c
        && 1 - Math.Pow(1.1, -c.TimeExponent) >= options.ColumnGain;

    /// <summary>
    /// The exposure below which light must not go on purpose, s: where one exposure surely cures enough and the wanted
    /// column stands. Without a comb or a bridge that tells, the last one, or a step below it while no column is
    /// missing.
    /// </summary>
    internal double Floor()
    {
        double at = last.Settings.Time;
        if (light is null)
            return columns is { Lost: 0 } ? at * (1 - options.MostDown) : at;
        return Rising(
            at / 8,
            at,
            t => light.ChanceOfLayers(t, layer, options.LeastLayers) >= Surely && !ColumnFalls(t)
        );
    }

    /// <summary>What the exposure should become, and why; the last one when nothing asks for another.</summary>
    internal (double Time, Reason? Why) Goal()
    {
        double at = last.Settings.Time,
            most = options.MostTime;
        if (TooFewLayers(at))
            return (Rising(at, Math.Min(most, 8 * at), t => !TooFewLayers(t)), Reason.Layers);
        double allowed = Math.Min(InTime, InDepth);
        if (ColumnFalls(at) && at < Math.Min(most, InDepth))
            return (Rising(at, Math.Min(Math.Min(most, InDepth), 8 * at), t => !ColumnFalls(t)), Reason.WantedColumn);
        if (TooDeep)
            return (Math.Max(Rising(at / 8, at, TooDeepAt), Floor()), Reason.PrintThrough);
        if (ColumnsGain && allowed > at)
            return (allowed, Reason.Columns);
        return (at, null);
    }

    // Less sure than what makes light go down at all, so that it does not go down again.
    private bool TooDeepAt(double time) => light!.ChanceBeyond(time, options.MostPrintThrough) >= Doubtful;

    // The least exposure between two at which something holds; the higher one when it holds nowhere.
    private static double Rising(double low, double high, Func<double, bool> holds)
    {
        for (int i = 0; i < 12; i++)
        {
            double middle = Math.Sqrt(low * high);
            if (holds(middle))
                high = middle;
            else
                low = middle;
        }
        return high;
    }
}
