namespace CalibGeom.TestObjects.Specs;

/// <summary>A ready-made spec with a name. Immutable.</summary>
/// <param name="Name">Its name, in lower case.</param>
/// <param name="Purpose">What it is for, as a sentence.</param>
/// <param name="Spec">The spec.</param>
public sealed record Preset(string Name, string Purpose, TestObjectSpec Spec);
