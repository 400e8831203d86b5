namespace CalibGeom.Verification.Clearances;

/// <summary>What to enter in a slicer for one axis so that parts come out at their nominal sizes.</summary>
/// <param name="Axis"><c>x</c> or <c>y</c>.</param>
/// <param name="ScaleFactor">Scale the model by this: 1 / (1 + s).</param>
/// <param name="EdgeOffset">Then move every edge outward by this, mm (negative: inward): -g / (1 + s).</param>
/// <param name="EdgeOffsetPixels">The offset in pixels, or null without a pixel pitch.</param>
public sealed record CompensationAxis(string Axis, double ScaleFactor, double EdgeOffset, double? EdgeOffsetPixels);
