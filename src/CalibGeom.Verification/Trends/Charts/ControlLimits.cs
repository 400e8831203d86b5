namespace CalibGeom.Verification.Trends.Charts;

/// <summary>The centre of a chart and the limits beyond which a point signals.</summary>
/// <param name="Low">Lower limit.</param>
/// <param name="Centre">The centre.</param>
/// <param name="High">Upper limit.</param>
public readonly record struct ControlLimits(double Low, double Centre, double High)
{
    /// <summary>Whether a point lies outside; a point on the limit does not.</summary>
    /// <param name="value">The point.</param>
    public bool Signals(double value) => value < Low || value > High;
}
