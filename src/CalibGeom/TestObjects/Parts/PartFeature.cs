namespace CalibGeom.TestObjects.Parts;

/// <summary>A row of the feature table and where it is measured.</summary>
/// <param name="Feature">The row.</param>
/// <param name="Lines">The lines that a size is measured along, or the gaps that a count counts; none for what is only
/// felt or looked at.</param>
public sealed record PartFeature(Feature Feature, IReadOnlyList<GaugeLine> Lines);
