namespace CalibGeom.Light;

/// <summary>A size as light is predicted to make it.</summary>
/// <param name="Feature">The feature's id, such as <c>box1.outside.x</c>.</param>
/// <param name="Value">The size in mm; null when it does not print or closes.</param>
public readonly record struct PrintedSize(FeatureId Feature, double? Value);
