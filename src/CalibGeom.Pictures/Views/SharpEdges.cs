using CalibGeom.Meshes;

namespace CalibGeom.Pictures.Views;

/// <summary>The edges of a mesh that a draughtsman would draw: where faces meet at an angle, and outlines.</summary>
internal static class SharpEdges
{
    private static readonly double SharpCosine = Math.Cos(25 * Math.PI / 180);

    /// <summary>Edges that are sharp, or that part what faces the viewer from what does not.</summary>
    internal static IEnumerable<(Vector3D From, Vector3D To)> Of(TriangleMesh mesh, ViewDirection view)
    {
        Vector3D[] normals = [.. Enumerable.Range(0, mesh.TriangleCount).Select(t => Normal(mesh.Triangle(t)))];
        var first = new Dictionary<(int, int), int>();
        int[] corners = mesh.Triangles.ToArray();
        for (int h = 0; h < corners.Length; h++)
        {
            int a = corners[h],
                b = corners[h % 3 == 2 ? h - 2 : h + 1];
            (int, int) key = a < b ? (a, b) : (b, a);
            if (!first.Remove(key, out int other))
                first[key] = h / 3;
            else if (IsDrawn(normals[h / 3], normals[other], view))
                yield return (mesh.Vertex(a), mesh.Vertex(b));
        }
        foreach ((int a, int b) in first.Keys)
            yield return (mesh.Vertex(a), mesh.Vertex(b));
    }

    internal static Vector3D Normal(Triangle3D t)
    {
        Vector3D normal = Vector3D.Cross(t.B - t.A, t.C - t.A);
        return normal.Length > 0 ? normal * (1 / normal.Length) : normal;
    }

    private static bool IsDrawn(Vector3D a, Vector3D b, ViewDirection view)
    {
        const double Edge = 1e-6;
        double one = Vector3D.Dot(a, view.Toward),
            two = Vector3D.Dot(b, view.Toward);
        if (one < -Edge && two < -Edge)
            return false;
        return Vector3D.Dot(a, b) < SharpCosine || (one > Edge) != (two > Edge);
    }
}
