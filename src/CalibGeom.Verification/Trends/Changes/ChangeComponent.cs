namespace CalibGeom.Verification.Trends.Changes;

/// <summary>
/// One way of having changed, as probable as the coupons leave it: its size is normal. Sizes are in ln(light), or in
/// the same unit for a gauge that moves alone.
/// </summary>
internal readonly record struct ChangeComponent(
    double LogWeight,
    ChangeCase Case,
    Cause Cause,
    double Mean,
    double Deviation
);
