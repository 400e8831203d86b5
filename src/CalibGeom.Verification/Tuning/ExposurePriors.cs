using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// What is believed of g = a + b ln(t / t0) - c (1 - exp(-r / tau)) before any print. The defaults are our estimate
/// without a source: wide enough for blurred edges of 15 to 25 micrometres (low end) and for what is felt at the bench
/// (high end, common practice). Immutable.
/// </summary>
public sealed record ExposurePriors
{
    /// <summary>Mean of a, the growth at the first trial's exposure without rest, mm. Default 0.020.</summary>
    public double GrowthMean
    {
        get;
        init => field = Require.Within(value, -1, 1, "mean growth", "mm", nameof(GrowthMean));
    } = 0.020;

    /// <summary>Standard deviation of a, mm. Default 0.030.</summary>
    public double GrowthDeviation
    {
        get;
        init => field = Require.Positive(value, 1, "deviation of growth", "mm", nameof(GrowthDeviation));
    } = 0.030;

    /// <summary>
    /// b: how much an edge grows when the exposure is multiplied by e, mm. Default median 0.035, 95 % 0.008 to 0.15.
    /// </summary>
    public LogNormalPrior TimeEffect
    {
        get;
        init => field = Require.Given(value, nameof(TimeEffect));
    } = LogNormalPrior.Of95(0.035, 0.008, 0.15);

    /// <summary>
    /// c: how much an edge draws back after a long rest, mm. Default median 0.012, 95 % 0.002 to 0.07.
    /// </summary>
    public LogNormalPrior RestEffect
    {
        get;
        init => field = Require.Given(value, nameof(RestEffect));
    } = LogNormalPrior.Of95(0.012, 0.002, 0.07);

    /// <summary>tau: how long the effect of rest takes, s. Default median 1.5, 95 % 0.5 to 4.5.</summary>
    public LogNormalPrior RestTime
    {
        get;
        init => field = Require.Given(value, nameof(RestTime));
    } = LogNormalPrior.Of95(1.5, 0.5, 4.5);

    /// <summary>
    /// Standard deviation of growth between prints at the same settings, mm, learnt from repeat prints. Default median
    /// 0.005, 95 % 0.002 to 0.0125.
    /// </summary>
    public LogNormalPrior BetweenPrints
    {
        get;
        init => field = Require.Given(value, nameof(BetweenPrints));
    } = LogNormalPrior.Of95(0.005, 0.002, 0.0125);

    /// <summary>Standard deviation of what the formula misses at any one setting, mm. Default 0.003.</summary>
    public double LackOfFit
    {
        get;
        init => field = Require.Positive(value, 1, "lack of fit", "mm", nameof(LackOfFit));
    } = 0.003;

    /// <summary>Standard deviation of growth along X less growth along Y, mm. Default 0.010.</summary>
    public double AxisDifference
    {
        get;
        init => field = Require.Positive(value, 1, "deviation between axes", "mm", nameof(AxisDifference));
    } = 0.010;

    /// <summary>
    /// Dp: how much deeper light cures when the exposure is multiplied by e, mm. Default median 0.12, 95 % 0.05 to
    /// 0.30.
    /// </summary>
    public LogNormalPrior PenetrationDepth
    {
        get;
        init => field = Require.Given(value, nameof(PenetrationDepth));
    } = LogNormalPrior.Of95(0.12, 0.05, 0.30);

    /// <summary>
    /// How the thinnest column that prints answers to exposure: d50 goes with t to the minus this power. Default 0.35.
    /// </summary>
    public double ColumnExponent
    {
        get;
        init => field = Require.Within(value, 0, 5, "column exponent", "", nameof(ColumnExponent));
    } = 0.35;

    /// <summary>Standard deviation of <see cref="ColumnExponent"/>. Default 0.20.</summary>
    public double ColumnExponentDeviation
    {
        get;
        init =>
            field = Require.Positive(value, 5, "deviation of the column exponent", "", nameof(ColumnExponentDeviation));
    } = 0.20;

    /// <summary>
    /// Standard deviation of the change of ln(light) from one print to the next, even and unseen. Intervals for the
    /// print to come allow for it; verdict, order and stop take the light of the prints as one. Default 0.04; 0 where
    /// light is known to be steady. Our estimate without a source.
    /// </summary>
    public double LightDrift
    {
        get;
        init => field = Require.Within(value, 0, 1, "drift of light", "", nameof(LightDrift));
    } = 0.04;

    /// <summary>The defaults.</summary>
    public static ExposurePriors Default { get; } = new();

    /// <summary>The same with the limits of felt fits, see <see cref="FitThresholds"/>.</summary>
    public FitThresholds Fits
    {
        get;
        init => field = Require.Given(value, nameof(Fits));
    } = FitThresholds.Default;
}
