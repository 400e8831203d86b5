namespace CalibGeom.Verification.Readings;

/// <summary>
/// A measuring instrument and what is known of its errors, all in mm. Each of its jaws has one systematic error shared
/// by all its readings, taken as rectangular. The defaults describe an ordinary 150 mm caliper; they are typical values
/// without a published source. Immutable.
/// </summary>
public sealed record Instrument
{
    /// <summary>Standard uncertainty of the outside jaws of an ordinary caliper, mm.</summary>
    public const double DefaultOutsideError = 0.0115;

    /// <summary>Standard uncertainty of the inside jaws of an ordinary caliper, mm.</summary>
    public const double DefaultInsideError = 0.017;

    /// <summary>Standard uncertainty of the depth rod of an ordinary caliper, mm.</summary>
    public const double DefaultDepthError = 0.023;

    /// <summary>Standard deviation of repeated readings with an ordinary caliper, mm.</summary>
    public const double DefaultRepeatability = 0.008;

    /// <summary>An instrument.</summary>
    /// <param name="name">The name readings use; empty for the ordinary caliper that readings without an instrument
    /// mean.</param>
    /// <param name="resolution">The step of its display, mm, 0 to 1. Default 0.01.</param>
    /// <param name="outsideError">Standard uncertainty of the outside jaws' systematic error, mm, 0 to 1.</param>
    /// <param name="insideError">The same for the inside jaws.</param>
    /// <param name="depthError">The same for the depth rod.</param>
    /// <param name="repeatability">Standard deviation of repeats when it is known, mm, 0 to 1; null to start from the
    /// default and learn from repeats.</param>
    /// <param name="jaw">The jaw all its readings use, such as the depth rod; null to go by the feature.</param>
    /// <param name="variation">How far the outside jaws' error may swing along the scale, plus or minus mm, 0 to 1;
    /// null for a quarter of the error's variance.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public Instrument(
        string name,
        double resolution = 0.01,
        double outsideError = DefaultOutsideError,
        double insideError = DefaultInsideError,
        double depthError = DefaultDepthError,
        double? repeatability = null,
        Jaw? jaw = null,
        double? variation = null
    )
    {
        ArgumentNullException.ThrowIfNull(name);
        Name = name;
        Resolution = Require.Within(resolution, 0, 1, "resolution", "mm", nameof(resolution));
        OutsideError = Require.Within(outsideError, 0, 1, "error of outside jaws", "mm", nameof(outsideError));
        InsideError = Require.Within(insideError, 0, 1, "error of inside jaws", "mm", nameof(insideError));
        DepthError = Require.Within(depthError, 0, 1, "error of the depth rod", "mm", nameof(depthError));
        Repeatability = repeatability is { } known
            ? Require.Within(known, 0, 1, "repeatability", "mm", nameof(repeatability))
            : null;
        Jaw = jaw;
        Variation = variation is { } swing
            ? Require.Within(swing, 0, 1, "swing of the error", "mm", nameof(variation))
            : null;
    }

    /// <summary>The ordinary caliper that readings without an instrument mean.</summary>
    public static Instrument Caliper { get; } = new("");

    /// <summary>The name readings use.</summary>
    public string Name { get; }

    /// <summary>The step of the display, mm.</summary>
    public double Resolution { get; }

    /// <summary>Standard uncertainty of the outside jaws' systematic error, mm.</summary>
    public double OutsideError { get; }

    /// <summary>Standard uncertainty of the inside jaws' systematic error, mm.</summary>
    public double InsideError { get; }

    /// <summary>Standard uncertainty of the depth rod's systematic error, mm.</summary>
    public double DepthError { get; }

    /// <summary>Standard deviation of repeats, mm, when it is known.</summary>
    public double? Repeatability { get; }

    /// <summary>The jaw all its readings use, or null to go by the feature.</summary>
    public Jaw? Jaw { get; }

    /// <summary>
    /// How far the outside jaws' error may swing along the scale, plus or minus mm, when it is known.
    /// </summary>
    public double? Variation { get; }

    /// <summary>The file that holds checks of this instrument against gauges, as readings name it, or null.</summary>
    public string? RecordFile { get; init; }

    /// <summary>Whether its line stands in a sheet as it was printed, with nothing filled in.</summary>
    internal bool IsAssumed { get; init; }

    /// <summary>
    /// An instrument described by its maximum permissible error: rectangular for the outside jaws, half as much again
    /// for the inside jaws, and 0.02 mm more for the depth rod (the surcharge of JIS B 7507:2016).
    /// </summary>
    /// <param name="name">The name readings use.</param>
    /// <param name="mpe">Maximum permissible error, mm, 0 to 1.</param>
    /// <param name="resolution">The step of its display, mm.</param>
    /// <param name="repeatability">Standard deviation of repeats when it is known, mm.</param>
    /// <param name="jaw">The jaw all its readings use, or null.</param>
    /// <param name="variation">How far its error may swing along the scale, plus or minus mm; null when not
    /// known.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static Instrument WithPermissibleError(
        string name,
        double mpe,
        double resolution = 0.01,
        double? repeatability = null,
        Jaw? jaw = null,
        double? variation = null
    )
    {
        _ = Require.Within(mpe, 0, 1, "permissible error", "mm", nameof(mpe));
        double third = Math.Sqrt(3);
        return new Instrument(
            name,
            resolution,
            mpe / third,
            1.5 * mpe / third,
            (mpe + 0.02) / third,
            repeatability,
            jaw,
            variation
        );
    }

    /// <summary>The standard uncertainty of one jaw's systematic error, mm.</summary>
    /// <param name="which">The jaw.</param>
    public double ErrorOf(Jaw which) =>
        which switch
        {
            Readings.Jaw.Inside => InsideError,
            Readings.Jaw.Depth => DepthError,
            _ => OutsideError,
        };

    /// <summary>
    /// Standard uncertainty of the part of a jaw's error that changes along the scale, mm. A gauge of another length
    /// does not remove it. When the swing is not known it is a quarter of the variance: half the error. The inside jaws
    /// are taken to swing half as much again.
    /// </summary>
    /// <param name="which">The jaw.</param>
    public double VaryingErrorOf(Jaw which) =>
        Variation is { } swing ? swing * (which == Readings.Jaw.Inside ? 1.5 : 1) / Math.Sqrt(3) : ErrorOf(which) / 2;

    /// <summary>
    /// Standard uncertainty of the part of a jaw's error that is the same at every length, mm; a gauge removes it.
    /// </summary>
    /// <param name="which">The jaw.</param>
    public double ConstantErrorOf(Jaw which)
    {
        double total = ErrorOf(which),
            varying = VaryingErrorOf(which);
        return Math.Sqrt(Math.Max(0, total * total - varying * varying));
    }
}
