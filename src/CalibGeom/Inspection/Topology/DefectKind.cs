namespace CalibGeom.Inspection.Topology;

/// <summary>A kind of fault of a surface.</summary>
public enum DefectKind
{
    /// <summary>An edge with one triangle: the surface has a border.</summary>
    OpenEdge,

    /// <summary>An edge with two triangles that run along it in the same direction: their outsides disagree.</summary>
    FlippedEdge,

    /// <summary>An edge with more than two triangles.</summary>
    CrowdedEdge,

    /// <summary>A vertex where fans of triangles meet that hang together by no edge at it.</summary>
    PinchedVertex,

    /// <summary>A triangle without area: two corners in one place, or all three on a line (decided exactly).</summary>
    DegenerateTriangle,

    /// <summary>A triangle on the same three corners as an earlier one, in either direction.</summary>
    DuplicateTriangle,

    /// <summary>
    /// A pair of triangles that pass through each other, or that lie in one plane and overlap (decided exactly).
    /// </summary>
    Crossing,

    /// <summary>
    /// A pair of triangles that touch without crossing, elsewhere than in a vertex or edge that both have (decided
    /// exactly).
    /// </summary>
    Contact,

    /// <summary>
    /// A closed component whose outside is turned in, where no component round it makes that a cavity.
    /// </summary>
    InsideOutComponent,

    /// <summary>
    /// A component with its outside out that lies inside the material of others: that is there twice.
    /// </summary>
    NestedComponent,
}
