using System.Runtime.InteropServices;
using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>
/// Refuses what the construction cannot make manifold: bodies that touch only along an edge or in a point, or whose
/// overlap is a sliver that vanishes in rounding.
/// </summary>
internal static class ManifoldCheck
{
    internal static void Require(MeshAssembly mesh)
    {
        ReadOnlySpan<int> t = CollectionsMarshal.AsSpan(mesh.Triangles);
        var edges = new MeshEdges(t, mesh.Vertices.Count);
        var opposite = new int[t.Length];
        // No triangle has a corner twice; if one had, the walk round it would end here and not go on for ever.
        Array.Fill(opposite, -1);
        int shared = int.MaxValue,
            open = int.MaxValue;
        for (int edge = 0; edge < edges.Count; edge++)
        {
            int first = edges.HalfEdge(edge, 0);
            if (edges.Uses(edge) == 2 && t[first] != t[edges.HalfEdge(edge, 1)])
            {
                opposite[first] = edges.HalfEdge(edge, 1);
                opposite[edges.HalfEdge(edge, 1)] = first;
            }
            else if (edges.Uses(edge) == 1)
                open = Math.Min(open, first);
            else
                shared = Math.Min(shared, Repeated(edges, edge, t));
        }
        if (shared < int.MaxValue)
            throw Touching("along an edge", mesh.Vertices[t[shared]]);
        if (open < int.MaxValue)
            throw new InvalidOperationException(
                $"An open edge at {mesh.Vertices[t[open]]} mm; please report the lofts."
            );
        RequireSingleFans(mesh, opposite);
    }

    /// <summary>The first half-edge that runs as one before it does.</summary>
    private static int Repeated(MeshEdges edges, int edge, ReadOnlySpan<int> t)
    {
        int other = -1;
        for (int i = 1; ; i++)
        {
            int half = edges.HalfEdge(edge, i);
            if (t[half] == t[edges.HalfEdge(edge, 0)] || t[half] == other)
                return half;
            other = t[half];
        }
    }

    /// <summary>Walks round each vertex: all its triangles must be met in one turn.</summary>
    private static void RequireSingleFans(MeshAssembly mesh, int[] opposite)
    {
        ReadOnlySpan<int> t = CollectionsMarshal.AsSpan(mesh.Triangles);
        var degree = new int[mesh.Vertices.Count];
        var first = new int[mesh.Vertices.Count];
        for (int i = 0; i < t.Length; i++)
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
