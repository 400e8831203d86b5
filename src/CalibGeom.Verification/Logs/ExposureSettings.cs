namespace CalibGeom.Verification.Logs;

/// <summary>What the person sets for normal layers. Immutable.</summary>
public sealed record ExposureSettings
{
    /// <summary>The longest exposure that is taken, s.</summary>
    public const double Longest = 600;

    /// <summary>Settings.</summary>
    /// <param name="time">Exposure time a layer in s, above 0 and at most 600.</param>
    /// <param name="rest">Rest time before each exposure in s, 0 to 60. Default 0.</param>
    /// <param name="edgeOffset">Edge offset entered in the slicer in mm, -1 to 1, positive = solids drawn larger.
    /// Default 0.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public ExposureSettings(double time, double rest = 0, double edgeOffset = 0)
    {
        Time = Require.Positive(time, Longest, "exposure time", "s", nameof(time));
        Rest = Require.Within(rest, 0, 60, "rest time", "s", nameof(rest));
        EdgeOffset = Require.Within(edgeOffset, -1, 1, "edge offset", "mm", nameof(edgeOffset));
    }

    /// <summary>Exposure time a layer in s.</summary>
    public double Time { get; }

    /// <summary>Rest time before each exposure in s.</summary>
    public double Rest { get; }

    /// <summary>Edge offset entered in the slicer in mm, positive = solids drawn larger.</summary>
    public double EdgeOffset { get; }

    /// <summary>Whether two settings give the same light and the same rest, whatever the edge offset.</summary>
    /// <param name="other">Other settings.</param>
    public bool SameProcess(ExposureSettings other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Math.Abs(Time - other.Time) < 1e-9 && Math.Abs(Rest - other.Rest) < 1e-9;
    }

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Time:0.###} s exposure, {Rest:0.###} s rest");
}
