namespace CalibGeom.Verification.Clearances;

/// <summary>A feature's size now, and with compensation. Immutable.</summary>
/// <param name="Feature">The feature.</param>
/// <param name="Nominal">Nominal size, mm.</param>
/// <param name="Now">Size to expect at the present settings, mm.</param>
/// <param name="Compensated">Size with the scale factor and the offset as computed, mm.</param>
/// <param name="WholePixels">Size with the offset rounded to whole pixels, mm; null without a pixel pitch.</param>
public sealed record CompensatedSize(
    FeatureId Feature,
    double Nominal,
    double Now,
    double Compensated,
    double? WholePixels
);
