using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// The side of a triangle's plane on which a vertex lies, exactly. A normal kept for each triangle decides nearly
/// always; what lies within its rounding error goes to <see cref="ExactMesh"/>.
/// </summary>
internal sealed class TrianglePlanes
{
    // The normal's components carry at most 4 roundings of their products, the scalar product with the offset 4 more;
    // 16 u is safe.
    private const double Bound = 16 * 1.1102230246251565e-16;

    // Below this products may have lost bits to underflow.
    private const double Tiny = 1e-280;

    private readonly ExactMesh mesh;
    private readonly int[] triangles;
    private readonly (Vector3D Normal, double Error)[] planes;

    internal TrianglePlanes(ExactMesh mesh, int[] triangles)
    {
        (this.mesh, this.triangles) = (mesh, triangles);
        planes = new (Vector3D, double)[triangles.Length / 3];
        for (int t = 0; t < planes.Length; t++)
        {
            Vector3D corner = mesh.Point(triangles[3 * t]);
            Vector3D u = mesh.Point(triangles[3 * t + 1]) - corner,
                v = mesh.Point(triangles[3 * t + 2]) - corner;
            double size =
                Math.Abs(u.Y * v.Z)
                + Math.Abs(u.Z * v.Y)
                + Math.Abs(u.Z * v.X)
                + Math.Abs(u.X * v.Z)
                + Math.Abs(u.X * v.Y)
                + Math.Abs(u.Y * v.X);
            planes[t] = (Vector3D.Cross(u, v), Bound * size);
        }
    }

    /// <summary>+1 where the normal points, -1 behind, 0 in the plane.</summary>
    internal int Side(int triangle, int vertex)
    {
        int corner = triangles[3 * triangle];
        ref readonly (Vector3D Normal, double Error) plane = ref planes[triangle];
        Vector3D offset = mesh.Point(vertex) - mesh.Point(corner);
        double height = Vector3D.Dot(plane.Normal, offset),
            size = Math.Abs(height);
        double reach = Math.Max(Math.Abs(offset.X), Math.Max(Math.Abs(offset.Y), Math.Abs(offset.Z)));
        if (size > plane.Error * reach && size > Tiny)
            return height > 0 ? 1 : -1;
        return mesh.Side(corner, triangles[3 * triangle + 1], triangles[3 * triangle + 2], vertex);
    }
}
