using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// What <see cref="MeshTopology.Run"/> found: one result for each kind of defect, the components and the measures.
/// Immutable.
/// </summary>
public sealed class TopologyReport
{
    internal TopologyReport(IReadOnlyList<MeshDefect> defects, IReadOnlyList<MeshComponent> components)
    {
        (Defects, Components) = (defects, components);
    }

    /// <summary>One entry for each <see cref="DefectKind"/>, in its order, also where the count is 0.</summary>
    public IReadOnlyList<MeshDefect> Defects { get; }

    /// <summary>The components in order of their first triangles.</summary>
    public IReadOnlyList<MeshComponent> Components { get; }

    /// <summary>The defects and the number of components in words, with remedies; errors first.</summary>
    public IReadOnlyList<Finding> Findings => field ??= ToFindings();

    /// <summary><see cref="Findings"/> with feature and layer of the first places.</summary>
    /// <param name="nameOf">Gives the feature id that belongs to a place (mm), or an empty text; may be left
    /// out.</param>
    /// <param name="layerOf">Gives the layer at a height (mm), such as <see cref="Layers.LayerReport.LayerAt"/>; may be
    /// left out.</param>
    public IReadOnlyList<Finding> ToFindings(
        Func<Vector3D, string>? nameOf = null,
        Func<double, int?>? layerOf = null
    ) => TopologyFindings.Of(this, nameOf, layerOf);

    /// <summary>Distinct positions that triangles use.</summary>
    public required int VertexCount { get; init; }

    /// <summary>Distinct edges between them.</summary>
    public required int EdgeCount { get; init; }

    /// <summary>Triangles.</summary>
    public required int TriangleCount { get; init; }

    /// <summary>Vertices minus edges plus triangles, over distinct positions.</summary>
    public int EulerCharacteristic => VertexCount - EdgeCount + TriangleCount;

    /// <summary>
    /// The signed volume in mm3, a body inside another counted once; bodies that cross count twice where they do.
    /// Without meaning when the mesh is open.
    /// </summary>
    public required double Volume { get; init; }

    /// <summary>The surface in mm2.</summary>
    public required double Area { get; init; }

    /// <summary>
    /// Whether there was so much of crossings and contacts that counting stopped at
    /// <see cref="MeshTopology.MostPairs"/> pairs.
    /// </summary>
    public required bool PairsCapped { get; init; }

    /// <summary>The sum of the genus over all components; null when one of them is not closed.</summary>
    public int? Genus => Components.Count > 0 && Components.All(c => c.IsClosed) ? Components.Sum(c => c.Genus) : null;

    /// <summary>Whether the surface is closed: no open, flipped or crowded edge, and at least one triangle.</summary>
    public bool IsClosed =>
        TriangleCount > 0
        && this[DefectKind.OpenEdge].Count + this[DefectKind.FlippedEdge].Count + this[DefectKind.CrowdedEdge].Count
            == 0;

    /// <summary>Whether there is no defect of any kind.</summary>
    public bool IsSound => TriangleCount > 0 && Defects.All(d => d.Count == 0);

    /// <summary>The result for one kind.</summary>
    /// <param name="kind">The kind.</param>
    public MeshDefect this[DefectKind kind] => Defects[(int)kind];
}
