namespace CalibGeom.Verification.Clearances;

/// <summary>How far a measured size lies from the fitted model.</summary>
/// <param name="Feature">The feature.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="Mean">The mean of its readings, mm, corrected to 20 degrees C where that was possible.</param>
/// <param name="Count">How many readings.</param>
/// <param name="Residual">Mean less fitted, mm.</param>
/// <param name="Standardised">Residual over its own standard uncertainty; 0 when the model must pass through
/// it.</param>
public sealed record FaceResidual(
    string Feature,
    string Instrument,
    double Mean,
    int Count,
    double Residual,
    double Standardised
)
{
    /// <summary>Whether it stands out: more than three of its standard uncertainties.</summary>
    public bool IsOutlier => Math.Abs(Standardised) > 3;
}
