using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// What a prediction assumes beyond the readings. Lengths in mm; defaults are typical values without a published
/// source. Immutable; every value is checked when it is set.
/// </summary>
public sealed record PredictionOptions
{
    /// <summary>The defaults.</summary>
    public static PredictionOptions Default { get; } = new();

    /// <summary>
    /// Form error: how far one caliper contact may be from the mean of a face. 0 to 1. Default 0.006.
    /// </summary>
    public double FormError
    {
        get;
        init => field = Require.Within(value, 0, 1, "form error", "mm", nameof(FormError));
    } = 0.006;

    /// <summary>How far a face's mean size may be from the model of scale and growth. 0 to 1. Default 0.003.</summary>
    public double ModelDeviation
    {
        get;
        init => field = Require.Within(value, 0, 1, "deviation of the model", "mm", nameof(ModelDeviation));
    } = 0.003;

    /// <summary>
    /// Standard deviation of what burrs or raised corners may add to the outside widths of boxes, all alike, unless a
    /// reading's note says "middle". 0 to 1. Default 0.010.
    /// </summary>
    public double BurrError
    {
        get;
        init => field = Require.Within(value, 0, 1, "error by burrs", "mm", nameof(BurrError));
    } = 0.010;

    /// <summary>Additional error of each jaw on flexible material. 0 to 1. Default 0.02.</summary>
    public double FlexibleError
    {
        get;
        init => field = Require.Within(value, 0, 1, "error by a flexible material", "mm", nameof(FlexibleError));
    } = 0.02;

    /// <summary>
    /// Standard deviation of growth from print to print (repeats of a reading are not reprints), mm, 0 to 1, when it is
    /// known; null (default) to start from <see cref="DefaultBetweenPrints"/> and learn from the prints that were read.
    /// </summary>
    public double? BetweenPrints
    {
        get;
        init =>
            field = value is { } known
                ? Require.Within(known, 0, 1, "deviation between prints", "mm", nameof(BetweenPrints))
                : null;
    }

    /// <summary>Standard deviation of growth from print to print where nothing is known, mm; no source.</summary>
    public const double DefaultBetweenPrints = 0.005;

    /// <summary>
    /// How much <see cref="DefaultBetweenPrints"/> is believed, in degrees of freedom: 4 is about 35 % (JCGM 100,
    /// G.4.2). 1 to 1000.
    /// </summary>
    public double BetweenPrintsDegreesOfFreedom
    {
        get;
        init =>
            field = Require.Within(
                value,
                1,
                1000,
                "number of degrees of freedom",
                "",
                nameof(BetweenPrintsDegreesOfFreedom)
            );
    } = 4;

    /// <summary>
    /// Standard uncertainty of a gauge block or pin read as <c>reference.*</c>. 0 to 1. Default 0.001.
    /// </summary>
    public double ReferenceUncertainty
    {
        get;
        init => field = Require.Within(value, 0, 1, "uncertainty of references", "mm", nameof(ReferenceUncertainty));
    } = 0.001;

    /// <summary>
    /// Standard deviation of scale among prints (no unit), used on an axis only where readings alone leave scale less
    /// certain than this. Over 0, at most 0.1. Default 0.005.
    /// </summary>
    public double ScalePrior
    {
        get;
        init => field = Require.Within(value, 1e-6, 0.1, "deviation of scale", "", nameof(ScalePrior));
    } = 0.005;

    /// <summary>
    /// How much the default repeatability of an instrument is believed, in degrees of freedom. 1 to 1000. Default 8 (25
    /// %; JCGM 100, G.4.2).
    /// </summary>
    public double RepeatabilityDegreesOfFreedom
    {
        get;
        init =>
            field = Require.Within(
                value,
                1,
                1000,
                "number of degrees of freedom",
                "",
                nameof(RepeatabilityDegreesOfFreedom)
            );
    } = 8;

    /// <summary>
    /// Pixel pitch of the printer, mm, 0.005 to 1, or null. A width that is no whole number of pixels then gets p
    /// sqrt(f (1 - f)) for the unknown phase, f being the fraction of a pixel.
    /// </summary>
    public double? PixelPitch
    {
        get;
        init => field = value is { } p ? Require.Within(p, 0.005, 1, "pixel pitch", "mm", nameof(PixelPitch)) : null;
    }

    /// <summary>Whether edges are drawn in grey levels, which takes the phase error away. Default false.</summary>
    public bool GreyLevels { get; init; }

    /// <summary>Where felt fits begin and end.</summary>
    public FitThresholds Thresholds
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(value));
    } = FitThresholds.Default;

    /// <summary>Between which clearances per side joints must lie, mm; null (default) to judge none.</summary>
    public ToleranceLimits? Limits { get; init; }

    /// <summary>
    /// Whether gross errors are left out and the form error is raised where the readings do not fit. Default true;
    /// false takes every error as assumed, so that an uncertainty depends on what was measured alone and not on what
    /// came out.
    /// </summary>
    public bool Robust { get; init; } = true;

    /// <summary>How coverage intervals are found. Default first order.</summary>
    public Route Route { get; init; } = Route.FirstOrder;

    /// <summary>
    /// How many draws Monte Carlo and the update by felt fits take. 1000 to 10,000,000. Default 40,000.
    /// </summary>
    public int Draws
    {
        get;
        init => field = (int)Require.Within(value, 1000, 1e7, "number of draws", "", nameof(Draws));
    } = 40_000;

    /// <summary>The seed of the draws. Default 1.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>
    /// The standard deviation of a width of unknown pixel phase: p sqrt(f (1 - f)), mm; 0 without a pitch or with grey
    /// levels.
    /// </summary>
    /// <param name="width">The width, mm.</param>
    public double PhaseError(double width)
    {
        if (PixelPitch is not { } pitch || GreyLevels)
            return 0;
        double pixels = width / pitch,
            fraction = pixels - Math.Floor(pixels);
        if (fraction is < 1e-3 or > 1 - 1e-3)
            return 0;
        return pitch * Math.Sqrt(fraction * (1 - fraction));
    }
}
