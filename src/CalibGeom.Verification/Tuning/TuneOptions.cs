using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// What the person wants, what the machine takes, and how far one step may go. Immutable; every value is checked when
/// it is set.
/// </summary>
public sealed record TuneOptions
{
    /// <summary>The defaults.</summary>
    public static TuneOptions Default { get; } = new();

    /// <summary>
    /// Wanted clearance per side in mm in the first joint; other joints keep their designed distance from it. Null
    /// (default): each joint as designed.
    /// </summary>
    public double? Target
    {
        get;
        init => field = value is { } v ? Require.Within(v, -1, 2, "target clearance", "mm", nameof(Target)) : null;
    }

    /// <summary>How far a clearance may lie from its target and count as on target, mm. Default 0.012.</summary>
    public double Tolerance
    {
        get;
        init => field = Require.Positive(value, 1, "tolerance", "mm", nameof(Tolerance));
    } = 0.012;

    /// <summary>The probability from which on something is told: on target, tight, loose. Default 0.8.</summary>
    public double Probability
    {
        get;
        init => field = Require.Within(value, 0.5, 0.999, "probability", "", nameof(Probability));
    } = 0.8;

    /// <summary>
    /// The change of a clearance that is worth another print, mm: half a caliper's step. Default 0.005.
    /// </summary>
    public double Visible
    {
        get;
        init => field = Require.Positive(value, 1, "visible change", "mm", nameof(Visible));
    } = 0.005;

    /// <summary>The thinnest column the person needs in mm, or null.</summary>
    public double? WantedColumn
    {
        get;
        init => field = value is { } v ? Require.Positive(v, 20, "wanted column", "mm", nameof(WantedColumn)) : null;
    }

    /// <summary>How many layers one exposure must cure. Default 1.2.</summary>
    public double LeastLayers
    {
        get;
        init => field = Require.Positive(value, 100, "number of layers to cure", "", nameof(LeastLayers));
    } = 1.2;

    /// <summary>
    /// Where no column is wanted, light grows while 10 % more would lower the column limit by this share. Default
    /// 0.0284, half an R40 step.
    /// </summary>
    public double ColumnGain
    {
        get;
        init => field = Require.Positive(value, 1, "gain of columns", "", nameof(ColumnGain));
    } = 0.0284;

    /// <summary>
    /// The greatest print-through in mm that light may lead to; slots up to this height may close. Default 0.40.
    /// </summary>
    public double MostPrintThrough
    {
        get;
        init => field = Require.Positive(value, 20, "greatest print-through", "mm", nameof(MostPrintThrough));
    } = 0.40;

    /// <summary>
    /// By what share more light may lengthen the print beyond that of the first trial, unless the resin needs it.
    /// Default 0.10.
    /// </summary>
    public double MostSlower
    {
        get;
        init => field = Require.Within(value, 0, 10, "share of print time for light", "", nameof(MostSlower));
    } = 0.10;

    /// <summary>The longest exposure in s. Default 600.</summary>
    public double MostTime
    {
        get;
        init => field = Require.Positive(value, ExposureSettings.Longest, "longest exposure", "s", nameof(MostTime));
    } = ExposureSettings.Longest;

    /// <summary>A further second of rest is worth while it gains this much, mm. Default 0.002.</summary>
    public double RestGain
    {
        get;
        init => field = Require.Positive(value, 1, "gain of rest", "mm", nameof(RestGain));
    } = 0.002;

    /// <summary>The longest rest, s. Default 6.</summary>
    public double MostRest
    {
        get;
        init => field = Require.Within(value, 0, 60, "longest rest", "s", nameof(MostRest));
    } = 6;

    /// <summary>The greatest increase of rest in one step, s. Default 1.5.</summary>
    public double MostRestStep
    {
        get;
        init => field = Require.Within(value, 0, 60, "greatest step of rest", "s", nameof(MostRestStep));
    } = 1.5;

    /// <summary>The least relative change of exposure in one step. Default 0.08.</summary>
    public double LeastStep
    {
        get;
        init => field = Require.Within(value, 0, 0.5, "least step", "", nameof(LeastStep));
    } = 0.08;

    /// <summary>The greatest relative increase of exposure in one step. Default 0.25.</summary>
    public double MostUp
    {
        get;
        init => field = Require.Within(value, 0.01, 2, "greatest increase", "", nameof(MostUp));
    } = 0.25;

    /// <summary>The greatest relative decrease of exposure in one step. Default 0.20.</summary>
    public double MostDown
    {
        get;
        init => field = Require.Within(value, 0.01, 0.9, "greatest decrease", "", nameof(MostDown));
    } = 0.20;

    /// <summary>What is left as it is. Default nothing.</summary>
    public Held Hold { get; init; }

    /// <summary>Whether an edge offset may be entered at all; false keeps it 0. Default true.</summary>
    public bool OffsetAllowed { get; init; } = true;

    /// <summary>To what the machine rounds exposure, s. Default 0.01.</summary>
    public double TimeStep
    {
        get;
        init => field = Require.Positive(value, 10, "step of exposure", "s", nameof(TimeStep));
    } = 0.01;

    /// <summary>To what the machine rounds rest, s. Default 0.1.</summary>
    public double RestStep
    {
        get;
        init => field = Require.Positive(value, 10, "step of rest", "s", nameof(RestStep));
    } = 0.1;

    /// <summary>To what the slicer rounds an edge offset, mm. Default 0.001.</summary>
    public double OffsetStep
    {
        get;
        init => field = Require.Positive(value, 1, "step of the edge offset", "mm", nameof(OffsetStep));
    } = 0.001;

    /// <summary>
    /// The pixel pitch along X and Y in mm, or null (default): as the last trial has it. Without grey-level edges an
    /// offset then moves by whole pixels, as many along one axis as along the other.
    /// </summary>
    public PerAxis? Pixel
    {
        get;
        init => field = PixelPitch.Require(value, nameof(Pixel));
    }

    /// <summary>A working curve from a data sheet, or null (default).</summary>
    public QuotedLight? Quoted { get; init; }

    /// <summary>
    /// The height in mm at which print time is priced: that of a production part, not of the coupon. Default 60.
    /// </summary>
    public double ProductionHeight
    {
        get;
        init => field = Require.Positive(value, 1000, "production height", "mm", nameof(ProductionHeight));
    } = 60;

    /// <summary>What is believed before any print.</summary>
    public ExposurePriors Priors
    {
        get;
        init => field = Require.Given(value, nameof(Priors));
    } = ExposurePriors.Default;

    /// <summary>
    /// Young's modulus of the resin as printed in MPa, or null; with it buckling and bending loads are told for
    /// comparison.
    /// </summary>
    public double? Modulus
    {
        get;
        init => field = value is { } v ? Require.Positive(v, 100000, "modulus", "MPa", nameof(Modulus)) : null;
    }

    /// <summary>Height of the columns in mm, for those loads. Default 6.3.</summary>
    public double ColumnHeight
    {
        get;
        init => field = Require.Positive(value, 500, "column height", "mm", nameof(ColumnHeight));
    } = 6.3;

    // How far one pixel moves the mean of X and Y, mm.
    internal double? PixelMove => (Pixel?.X + Pixel?.Y) / 2;
}
