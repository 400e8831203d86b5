using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;

namespace CalibGeom.Inspection;

/// <summary>
/// What an inspection found: the surface, the layers, all findings and the verdict. Immutable and safe to share between
/// threads.
/// </summary>
public sealed class MeshReport
{
    private readonly Finding[] findings;

    internal MeshReport(TopologyReport topology, LayerReport layers, IEnumerable<Finding> findings)
    {
        (Topology, Layers) = (topology, layers);
        this.findings = [.. findings.OrderByDescending(f => f.Severity)];
    }

    /// <summary>The surface.</summary>
    public TopologyReport Topology { get; }

    /// <summary>The layers.</summary>
    public LayerReport Layers { get; }

    /// <summary>All findings, errors first.</summary>
    public IReadOnlyList<Finding> Findings => findings;

    /// <summary>What the gravest finding makes of the mesh.</summary>
    public MeshVerdict Verdict =>
        findings.Length == 0
            ? MeshVerdict.Ready
            : findings[0].Severity switch
            {
                Severity.Error => MeshVerdict.Failing,
                Severity.Warning => MeshVerdict.Doubtful,
                _ => MeshVerdict.Ready,
            };

    /// <summary>The same with more findings, which count for the verdict.</summary>
    /// <param name="more">Findings of other checks, such as a comparison with a spec.</param>
    public MeshReport With(IEnumerable<Finding> more)
    {
        ArgumentNullException.ThrowIfNull(more);
        return new MeshReport(Topology, Layers, [.. more, .. findings]);
    }
}
