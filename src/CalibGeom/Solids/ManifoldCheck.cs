using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>Refuses what the construction cannot make manifold: bodies that touch only along an edge or in a point, or
/// whose
/// overlap is a sliver that vanishes in rounding.</summary>
internal static class ManifoldCheck
{
    internal static void Require(MeshAssembly mesh)
    {
        List<int> t = mesh.Triangles;
        var next = new Dictionary<(int, int), int>(t.Count);
        for (int i = 0; i < t.Count; i++)
        {
            int from = t[i],
                to = t[i % 3 == 2 ? i - 2 : i + 1];
            if (!next.TryAdd((from, to), i))
                throw Touching("along an edge", mesh.Vertices[from]);
        }
        foreach ((int from, int to) in next.Keys)
            if (!next.ContainsKey((to, from)))
                throw new InvalidOperationException(
                    $"An open edge at {mesh.Vertices[from]} mm; please report the lofts."
                );
        RequireSingleFans(mesh, next);
    }

    /// <summary>Walks round each vertex: all its triangles must be met in one turn.</summary>
    private static void RequireSingleFans(MeshAssembly mesh, Dictionary<(int, int), int> next)
    {
        List<int> t = mesh.Triangles;
        var degree = new int[mesh.Vertices.Count];
        var first = new int[mesh.Vertices.Count];
        for (int i = 0; i < t.Count; i++)
        {
            degree[t[i]]++;
            first[t[i]] = i;
        }
        for (int v = 0; v < degree.Length; v++)
        {
            int corner = first[v],
                met = 0;
            do
            {
                met++;
                int before = t[corner % 3 == 0 ? corner + 2 : corner - 1];
                corner = next[(v, before)];
            } while (corner != first[v]);
            if (met != degree[v])
                throw Touching("in a point", mesh.Vertices[v]);
        }
    }

    private static ArgumentException Touching(string how, GridPoint3D place) =>
        new(
            $"Lofts meet only {how} at {place} mm, or overlap there by less than the grid's 0.0001 mm, which no "
                + $"closed surface can show. Move them apart, or let them overlap on a level plane.",
            "lofts"
        );
}
