using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>
/// Refuses what the construction cannot make manifold: bodies that touch only along an edge or in a point, or whose
/// overlap is a sliver that vanishes in rounding.
/// </summary>
internal static class ManifoldCheck
{
    internal static void Require(MeshAssembly mesh)
    {
        List<int> t = mesh.Triangles;
        // Half-edges by the pair of their ends: each pair once, and the pair turned round too.
        var directed = new EdgeTable(t.Count);
        for (int i = 0; i < t.Count; i++)
        {
            int from = t[i],
                to = t[i % 3 == 2 ? i - 2 : i + 1];
            if (directed.Add(from, to) != i)
                throw Touching("along an edge", mesh.Vertices[from]);
        }
        var opposite = new int[t.Count];
        for (int i = 0; i < t.Count; i++)
        {
            (int from, int to) = directed[i];
            opposite[i] = directed.Find(to, from);
            if (opposite[i] < 0)
                throw new InvalidOperationException(
                    $"An open edge at {mesh.Vertices[from]} mm; please report the lofts."
                );
        }
        RequireSingleFans(mesh, opposite);
    }

    /// <summary>Walks round each vertex: all its triangles must be met in one turn.</summary>
    private static void RequireSingleFans(MeshAssembly mesh, int[] opposite)
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
                // The half-edge that comes in, turned round, goes out of the next triangle of the fan.
                corner = opposite[corner % 3 == 0 ? corner + 2 : corner - 1];
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
