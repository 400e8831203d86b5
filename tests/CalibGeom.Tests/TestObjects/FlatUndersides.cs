using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;

namespace CalibGeom.Tests.TestObjects;

/// <summary>The undersides of a mesh that are too flat to grow by themselves, measured on its triangles.</summary>
internal static class FlatUndersides
{
    /// <summary>
    /// The least width, seen from above, of the connected underside whose least width is greatest, mm; what lies on the
    /// plate does not count.
    /// </summary>
    internal static double Widest(TriangleMesh mesh)
    {
        double steepest = -Math.Cos(OverhangLimits.Failing * Math.PI / 180),
            plate = mesh.Bounds.Min.Z + 0.01;
        int[] flat =
        [
            .. Enumerable
                .Range(0, mesh.TriangleCount)
                .Where(t => Normal(mesh, t) is var n && n.Length > 0 && n.Z / n.Length < steepest)
                .Where(t => Corners(mesh, t).Any(p => p.Z > plate)),
        ];
        var patchOf = new Dictionary<Vector3D, int>();
        var patches = new List<List<Vector3D>>();
        foreach (int t in flat)
            Join(Corners(mesh, t), patchOf, patches);
        return patches.Select(LeastWidth).DefaultIfEmpty(0).Max();
    }

    private static void Join(Vector3D[] corners, Dictionary<Vector3D, int> patchOf, List<List<Vector3D>> patches)
    {
        int into = patches.Count;
        patches.Add([.. corners]);
        foreach (int other in corners.Where(patchOf.ContainsKey).Select(c => patchOf[c]).Distinct().ToArray())
        {
            patches[into].AddRange(patches[other]);
            patches[other].Clear();
        }
        foreach (Vector3D p in patches[into])
            patchOf[p] = into;
    }

    private static double LeastWidth(List<Vector3D> points) =>
        points.Count == 0
            ? 0
            : Enumerable
                .Range(0, 90)
                .Select(i => i * Math.PI / 90)
                .Min(a =>
                {
                    double[] along = [.. points.Select(p => p.X * Math.Cos(a) + p.Y * Math.Sin(a))];
                    return along.Max() - along.Min();
                });

    private static Vector3D Normal(TriangleMesh mesh, int t)
    {
        Vector3D[] c = Corners(mesh, t);
        return Vector3D.Cross(c[1] - c[0], c[2] - c[0]);
    }

    private static Vector3D[] Corners(TriangleMesh mesh, int t)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
        return [a, b, c];
    }
}
