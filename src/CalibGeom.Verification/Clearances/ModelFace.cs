namespace CalibGeom.Verification.Clearances;

/// <summary>One row of a fit: a face of one print as it was read.</summary>
internal sealed record ModelFace(int Print, ReadingGroup Group, Face Face);
