namespace CalibGeom.Inspection.Topology;

/// <summary>How two triangles meet, apart from the vertices and edges they have in common.</summary>
internal enum Meeting
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>They touch.</summary>
    Touch,

    /// <summary>They pass through each other or overlap in a plane.</summary>
    Cross,
}
