using CalibGeom.Inspection;

namespace CalibGeom.Cli.Inspect;

/// <summary>What <c>inspect</c> found in one file.</summary>
internal sealed record Inspected(string Path, MeshReport Report, bool Compared);
