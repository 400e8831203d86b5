using CalibGeom.Meshes;

namespace CalibGeom.Tests.Meshes;

/// <summary>A plain second opinion on a surface, sharing no code with the library.</summary>
internal static class SurfaceCheck
{
    /// <summary>Every edge in exactly two triangles with opposite directions, no degenerate or duplicate triangle; by corner positions.</summary>
    internal static void RequireClosed(TriangleMesh mesh)
    {
        var edges = new Dictionary<(Vector3D, Vector3D), int>();
        var seen = new HashSet<(Vector3D, Vector3D, Vector3D)>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            Assert.True(Vector3D.Cross(b - a, c - a).Length > 0, $"triangle {t} is degenerate at {a}");
            Vector3D[] sorted = [.. new[] { a, b, c }.OrderBy(v => v.X).ThenBy(v => v.Y).ThenBy(v => v.Z)];
            Assert.True(seen.Add((sorted[0], sorted[1], sorted[2])), $"triangle {t} is a duplicate at {a}");
            foreach ((Vector3D, Vector3D) edge in new[] { (a, b), (b, c), (c, a) })
                edges[edge] = edges.GetValueOrDefault(edge) + 1;
        }
        foreach (((Vector3D from, Vector3D to), int count) in edges)
        {
            Assert.True(count == 1, $"edge {from} to {to} is used {count} times in one direction");
            Assert.True(edges.ContainsKey((to, from)), $"edge {from} to {to} is open");
        }
    }

    /// <summary>Vertices - edges + triangles, by corner positions.</summary>
    internal static int EulerCharacteristic(TriangleMesh mesh)
    {
        var vertices = new HashSet<Vector3D>();
        var edges = new HashSet<(Vector3D, Vector3D)>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            vertices.UnionWith([a, b, c]);
            foreach ((Vector3D p, Vector3D q) in new[] { (a, b), (b, c), (c, a) })
                edges.Add(Comparer(p, q) < 0 ? (p, q) : (q, p));
        }
        return vertices.Count - edges.Count + mesh.TriangleCount;
    }

    /// <summary>The number of parts connected by edges or corners.</summary>
    internal static int Components(TriangleMesh mesh)
    {
        var parent = new Dictionary<Vector3D, Vector3D>();
        Vector3D Root(Vector3D v)
        {
            if (!parent.TryGetValue(v, out Vector3D p)) return parent[v] = v;
            return p == v ? v : parent[v] = Root(p);
        }
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            parent[Root(a)] = Root(b);
            parent[Root(b)] = Root(c);
        }
        return parent.Keys.Select(Root).Distinct().Count();
    }

    private static int Comparer(Vector3D p, Vector3D q) => (p.X, p.Y, p.Z).CompareTo((q.X, q.Y, q.Z));
}
