namespace CalibGeom.Inspection.Layers;

/// <summary>
/// How flat an underside may hang over nothing, the one rule for designs and for layers: degrees counted from
/// horizontal, 90 being upright. Common practice, no source.
/// </summary>
public static class OverhangLimits
{
    /// <summary>Flatter than this an underside fails: 30 degrees.</summary>
    public const double Failing = 30;

    /// <summary>From here on an underside prints well: 35 degrees; between the two it may sag.</summary>
    public const double Good = 35;

    /// <summary>The angle, degrees, of an underside that sticks out so far while it rises so far.</summary>
    /// <param name="reach">mm, level.</param>
    /// <param name="rise">mm, upright.</param>
    public static double Angle(double reach, double rise) => Math.Atan2(rise, reach) * 180 / Math.PI;
}
