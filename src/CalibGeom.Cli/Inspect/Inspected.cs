using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;

namespace CalibGeom.Cli.Inspect;

/// <summary>What <c>inspect</c> found in one file.</summary>
internal sealed record Inspected(
    string Path,
    TopologyReport Topology,
    LayerReport Layers,
    IReadOnlyList<Finding> Findings,
    bool Compared
)
{
    internal Severity Worst => Findings.Count == 0 ? Severity.Note : Findings.Max(f => f.Severity);
}
