namespace CalibGeom.Verification.Logs;

/// <summary>What an object's own spec says of how it is printed. Immutable.</summary>
/// <param name="Layer">Layer height in mm, or null.</param>
/// <param name="BaseLayers">Number of base layers, or null.</param>
/// <param name="BaseTime">Exposure of a base layer in s, or null.</param>
/// <param name="Pixel">Pixel pitch along the printer's X and Y in mm, or null.</param>
public sealed record ProcessFacts(
    double? Layer = null,
    int? BaseLayers = null,
    double? BaseTime = null,
    PerAxis? Pixel = null
);
