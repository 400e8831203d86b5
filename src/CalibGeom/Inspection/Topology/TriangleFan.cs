using System.Runtime.Intrinsics;
using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// Many triangles about one vertex. All boxes round them meet there; but two of them meet elsewhere only where they
/// cover a direction from the vertex both, and what each covers is an arc on the unit sphere.
/// </summary>
internal sealed class TriangleFan(TriangleMesh mesh, int vertex, int[] triangles)
{
    // Of the sphere's radius: more than rounding can move a direction.
    private const double Unsure = 1e-12;

    /// <summary>The triangles.</summary>
    internal int[] Triangles => triangles;

    /// <summary>
    /// Calls for each pair that may meet elsewhere than in the vertex, until the call returns false.
    /// </summary>
    internal void Pairs(Func<int, int, bool> pair) =>
        new BoxTree(Array.ConvertAll(triangles, ArcOf)).Pairs((i, j) => pair(triangles[i], triangles[j]));

    private (Vector128<float> Low, Vector128<float> High) ArcOf(int triangle)
    {
        ReadOnlySpan<int> corners = mesh.Triangles.Slice(3 * triangle, 3);
        int at = corners.IndexOf(vertex);
        Vector3D from = mesh.Vertex(vertex),
            start = Unit(mesh.Vertex(corners[(at + 1) % 3]) - from),
            end = Unit(mesh.Vertex(corners[(at + 2) % 3]) - from);
        // The arc leaves its chord by the sagitta at most.
        double half = (end - start).Length / 2,
            beyond = 1 - Math.Sqrt(Math.Max(0, 1 - half * half)) + Unsure;
        var margin = new Vector3D(beyond, beyond, beyond);
        return TriangleBoxes.BoxOf(Vector3D.Least(start, end) - margin, Vector3D.Most(start, end) + margin);
    }

    private static Vector3D Unit(Vector3D v) => v * (1 / v.Length);
}
