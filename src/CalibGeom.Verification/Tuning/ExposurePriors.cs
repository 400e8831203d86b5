using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// What is believed of g = a + b ln(t / t0) - c (1 - exp(-r / tau)) before any print. The defaults are our estimate
/// from blurred edges of 15
/// to 25 micrometres and doses of 2 to 6 times the critical one; no source. Immutable.
/// </summary>
public sealed record ExposurePriors
{
    /// <summary>Mean of a, the growth at the first trial's exposure without rest, mm. Default 0.020.</summary>
    public double GrowthMean { get; init; } = 0.020;

    /// <summary>Standard deviation of a, mm. Default 0.015.</summary>
    public double GrowthDeviation { get; init; } = 0.015;

    /// <summary>
    /// b: how much an edge grows when the exposure is multiplied by e, mm. Default median 0.018, 95 % 0.007 to 0.045.
    /// </summary>
    public LogNormalPrior TimeEffect { get; init; } = LogNormalPrior.From95(0.018, 0.007, 0.045);

    /// <summary>
    /// c: how much an edge draws back after a long rest, mm. Default median 0.006, 95 % 0.0015 to 0.025.
    /// </summary>
    public LogNormalPrior RestEffect { get; init; } = LogNormalPrior.From95(0.006, 0.0015, 0.025);

    /// <summary>tau: how long the effect of rest takes, s. Default median 1.0, 95 % 0.4 to 2.5.</summary>
    public LogNormalPrior RestTime { get; init; } = LogNormalPrior.From95(1.0, 0.4, 2.5);

    /// <summary>Standard deviation of growth between prints at the same settings, mm. Default 0.005.</summary>
    public double BetweenPrints { get; init; } = 0.005;

    /// <summary>Standard deviation of what the formula misses at any one setting, mm. Default 0.003.</summary>
    public double LackOfFit { get; init; } = 0.003;

    /// <summary>Standard deviation of growth along X less growth along Y, mm. Default 0.010.</summary>
    public double AxisDifference { get; init; } = 0.010;

    /// <summary>
    /// Dp: how much deeper light cures when the exposure is multiplied by e, mm. Default median 0.12, 95 % 0.05 to
    /// 0.30.
    /// </summary>
    public LogNormalPrior PenetrationDepth { get; init; } = LogNormalPrior.From95(0.12, 0.05, 0.30);

    /// <summary>
    /// How the thinnest column that prints answers to exposure: d50 goes with t to the minus this power. Default 0.35.
    /// </summary>
    public double ColumnExponent { get; init; } = 0.35;

    /// <summary>Standard deviation of <see cref="ColumnExponent"/>. Default 0.20.</summary>
    public double ColumnExponentDeviation { get; init; } = 0.20;

    /// <summary>The defaults.</summary>
    public static ExposurePriors Default { get; } = new();

    /// <summary>The same with the limits of felt fits, see <see cref="FitThresholds"/>.</summary>
    public FitThresholds Fits { get; init; } = FitThresholds.Default;

    internal void Check()
    {
        Require.Within(GrowthMean, -1, 1, "mean growth", "mm", nameof(GrowthMean));
        Require.Positive(GrowthDeviation, 1, "deviation of growth", "mm", nameof(GrowthDeviation));
        Require.Positive(BetweenPrints, 1, "deviation between prints", "mm", nameof(BetweenPrints));
        Require.Positive(LackOfFit, 1, "lack of fit", "mm", nameof(LackOfFit));
        Require.Positive(AxisDifference, 1, "deviation between axes", "mm", nameof(AxisDifference));
        Require.Within(ColumnExponent, 0, 5, "column exponent", "", nameof(ColumnExponent));
        Require.Positive(
            ColumnExponentDeviation,
            5,
            "deviation of the column exponent",
            "",
            nameof(ColumnExponentDeviation)
        );
    }
}
