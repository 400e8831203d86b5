using CalibGeom.Verification.Trends.Charts;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Trends;

/// <summary>What counts as moved, and what is believed before. An object that exists is valid. Immutable.</summary>
public sealed record TrendOptions
{
    private readonly double runLength = 50,
        tolerance = 0.012,
        lightTolerance = 0.10,
        betweenPrints = 0.005,
        betweenThroughs = 0.010,
        columnExponent = 0.35;
    private readonly int baseline = 2;
    private readonly ChartMemo charts = new();

    // Nine charts or so stand side by side: each gives a false alarm ten times as seldom as the verdict.
    internal double ChartLength => Math.Min(1e5, 10 * RunLength);

    internal ChartDesign Charts => charts.For(ChartLength);

    /// <summary>
    /// One false alarm in about so many coupons, 10 to 2000. Default 50: with a coupon a week about once a year.
    /// </summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double RunLength
    {
        get => runLength;
        init => runLength = Require.Within(value, 10, 2000, "run length", "coupons", nameof(RunLength));
    }

    /// <summary>
    /// How many coupons are taken to stand before any sudden change, 1 to 100. Default 2: a calibration is confirmed by
    /// its second print.
    /// </summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public int Baseline
    {
        get => baseline;
        init => baseline = (int)Require.Within(value, 1, 100, "baseline", "coupons", nameof(Baseline));
    }

    /// <summary>
    /// By how much a clearance may change, mm per side, above 0 and at most 1. Default 0.012, as tune.
    /// </summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double Tolerance
    {
        get => tolerance;
        init => tolerance = Require.Positive(value, 1, "tolerance", "mm", nameof(Tolerance));
    }

    /// <summary>
    /// By what share the light may change, 0.01 to 0.9. Default 0.10: about the smallest step that tune advises.
    /// </summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double LightTolerance
    {
        get => lightTolerance;
        init => lightTolerance = Require.Within(value, 0.01, 0.9, "light tolerance", "", nameof(LightTolerance));
    }

    /// <summary>Standard deviation of the growth between prints of one process, mm, above 0. Default 0.005.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double BetweenPrints
    {
        get => betweenPrints;
        init => betweenPrints = Require.Positive(value, 1, "deviation between prints", "mm", nameof(BetweenPrints));
    }

    /// <summary>The same of the print-through, mm, above 0. Default 0.010 (our estimate).</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double BetweenThroughs
    {
        get => betweenThroughs;
        init =>
            betweenThroughs = Require.Positive(
                value,
                1,
                "deviation of print-through between prints",
                "mm",
                nameof(BetweenThroughs)
            );
    }

    /// <summary>
    /// How growth answers to ln(light), mm. Default median 0.035, 95 % 0.008 to 0.15; an estimate from a log is
    /// sharper.
    /// </summary>
    public LogNormalPrior LightEffect { get; init; } = LogNormalPrior.Of95(0.035, 0.008, 0.15);

    /// <summary>How print-through answers to ln(light): Dp, mm. Default median 0.12, 95 % 0.05 to 0.30.</summary>
    public LogNormalPrior PenetrationDepth { get; init; } = LogNormalPrior.Of95(0.12, 0.05, 0.30);

    /// <summary>ln of the thinnest column goes with ln(light) times minus this, 0 to 5. Default 0.35.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double ColumnExponent
    {
        get => columnExponent;
        init => columnExponent = Require.Within(value, 0, 5, "column exponent", "", nameof(ColumnExponent));
    }

    /// <summary>
    /// Standard deviation between what two objects or two places of the plate show of the same process, in the unit of
    /// a gauge: growth 0.005 mm; print-through 0.020 mm from combs (a step of the standard comb over the root of 12)
    /// and 0.005 mm from bridges, which have no steps and differ by the form of two faces, as widths do; columns 0.1 in
    /// ln(diameter). Our estimates.
    /// </summary>
    /// <param name="value">A value of the gauge.</param>
    public static double BetweenSeries(GaugeValue value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value switch
        {
            { Gauge: Gauge.Columns } => 0.1,
            { Gauge: Gauge.PrintThrough, Counted: true } => 0.020,
            _ => 0.005,
        };
    }

    /// <summary>The defaults.</summary>
    public static TrendOptions Default { get; } = new();
}
