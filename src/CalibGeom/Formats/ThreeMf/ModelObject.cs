using CalibGeom.Meshes;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>An object resource: a mesh or references to objects defined before it, in the units of the file.</summary>
internal sealed record ModelObject(int Id, string Name, string Type)
{
    internal TriangleMesh Mesh { get; set; } = TriangleMesh.Empty;

    internal List<(ModelObject Child, Affine3D Transform)> Components { get; } = [];

    /// <summary>
    /// How deep components are nested, how many meshes and how many triangles come out: all known before anything is
    /// expanded.
    /// </summary>
    internal int Depth => depth;

    internal long Instances => instances;

    internal long Triangles => Mesh.TriangleCount + componentTriangles;

    private int depth = 1;
    private long instances = 1;
    private long componentTriangles;

    internal void Add(ModelObject child, Affine3D transform)
    {
        Components.Add((child, transform));
        depth = Math.Max(depth, child.depth + 1);
        instances = Math.Min(instances + child.instances, int.MaxValue);
        componentTriangles = Math.Min(componentTriangles + child.Triangles, int.MaxValue);
    }
}
