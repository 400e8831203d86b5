using CalibGeom.Meshes;

namespace CalibGeom.Tests.Meshes;

/// <summary>
/// A plain second opinion on a surface, sharing no code with the library: corners are told apart by position alone.
/// </summary>
internal static class SurfaceCheck
{
    /// <summary>
    /// Every edge in exactly two triangles with opposite directions, no degenerate or duplicate triangle; by corner
    /// positions.
    /// </summary>
    internal static void RequireClosed(TriangleMesh mesh)
    {
        int[] corners = Weld(mesh, out _);
        var edges = new HashSet<(int, int)>(corners.Length);
        var seen = new HashSet<(int, int, int)>(mesh.TriangleCount);
        for (int t = 0; t < corners.Length; t += 3)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t / 3);
            if (!(Vector3D.Cross(b - a, c - a).Length > 0))
                Assert.Fail($"triangle {t / 3} is degenerate at {a}");
            int[] sorted = [corners[t], corners[t + 1], corners[t + 2]];
            Array.Sort(sorted);
            if (!seen.Add((sorted[0], sorted[1], sorted[2])))
                Assert.Fail($"triangle {t / 3} is a duplicate at {a}");
            foreach ((int, int) edge in EdgesOf(corners, t))
                if (!edges.Add(edge))
                    Assert.Fail($"an edge of triangle {t / 3} at {a} is used twice in one direction");
        }
        for (int t = 0; t < corners.Length; t += 3)
            foreach ((int from, int to) in EdgesOf(corners, t))
                if (!edges.Contains((to, from)))
                    Assert.Fail($"an edge of triangle {t / 3} at {mesh.Triangle(t / 3).A} is open");
    }

    /// <summary>Vertices - edges + triangles, by corner positions.</summary>
    internal static int EulerCharacteristic(TriangleMesh mesh)
    {
        int[] corners = Weld(mesh, out int vertices);
        var edges = new HashSet<(int, int)>(corners.Length);
        for (int t = 0; t < corners.Length; t += 3)
            foreach ((int p, int q) in EdgesOf(corners, t))
                edges.Add(p < q ? (p, q) : (q, p));
        return vertices - edges.Count + mesh.TriangleCount;
    }

    /// <summary>The number of parts connected by edges or corners.</summary>
    internal static int Components(TriangleMesh mesh)
    {
        int[] corners = Weld(mesh, out int vertices),
            parent = [.. Enumerable.Range(0, vertices)];
        int Root(int v)
        {
            while (parent[v] != v)
                v = parent[v] = parent[parent[v]];
            return v;
        }
        for (int t = 0; t < corners.Length; t += 3)
        {
            parent[Root(corners[t])] = Root(corners[t + 1]);
            parent[Root(corners[t + 1])] = Root(corners[t + 2]);
        }
        return Enumerable.Range(0, vertices).Count(v => parent[v] == v);
    }

    /// <summary>A number for each corner, the same for corners in the same place.</summary>
    private static int[] Weld(TriangleMesh mesh, out int vertices)
    {
        var numbers = new Dictionary<Vector3D, int>(mesh.VertexCount);
        var corners = new int[3 * mesh.TriangleCount];
        for (int i = 0; i < corners.Length; i++)
        {
            Vector3D place = mesh.Vertex(mesh.Triangles[i]);
            if (!numbers.TryGetValue(place, out corners[i]))
                numbers.Add(place, corners[i] = numbers.Count);
        }
        vertices = numbers.Count;
        return corners;
    }

    private static (int, int)[] EdgesOf(int[] corners, int t) =>
        [(corners[t], corners[t + 1]), (corners[t + 1], corners[t + 2]), (corners[t + 2], corners[t])];
}
