namespace CalibGeom.Pictures.Plots;

/// <summary>A mark on an axis.</summary>
/// <param name="Value">Where it stands.</param>
/// <param name="Text">What is written at it.</param>
public readonly record struct Tick(double Value, string Text);
