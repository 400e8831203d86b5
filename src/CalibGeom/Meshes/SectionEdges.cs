using System.Runtime.InteropServices;
using CalibGeom.Planar;

namespace CalibGeom.Meshes;

/// <summary>The undirected edges of a mesh, numbered; vertices at exactly the same place count as one.</summary>
internal sealed class SectionEdges
{
    private readonly EdgeTable edges;

    internal SectionEdges(TriangleMesh mesh)
    {
        int[] welded = Weld(mesh.Coordinates);
        ReadOnlySpan<int> triangles = mesh.Triangles;
        OfTriangle = new int[triangles.Length];
        edges = new EdgeTable(triangles.Length / 2);
        for (int t = 0; t < triangles.Length; t += 3)
        for (int corner = 0; corner < 3; corner++)
        {
            int a = welded[triangles[t + corner]],
                b = welded[triangles[t + (corner + 1) % 3]];
            OfTriangle[t + corner] = edges.Add(Math.Min(a, b), Math.Max(a, b));
        }
    }

    /// <summary>For each triangle the edges from corner 0 to 1, 1 to 2 and 2 to 0.</summary>
    internal int[] OfTriangle { get; }

    internal int Count => edges.Count;

    /// <summary>The edge's two ends as vertex indices.</summary>
    internal (int Low, int High) Ends(int edge) => edges[edge];

    private static int[] Weld(ReadOnlySpan<double> coordinates)
    {
        int count = coordinates.Length / 3;
        var place = new Dictionary<(double, double, double), int>(count);
        var welded = new int[count];
        for (int v = 0; v < count; v++)
        {
            // Adding zero makes -0 and +0 one key.
            var key = (coordinates[3 * v] + 0.0, coordinates[3 * v + 1] + 0.0, coordinates[3 * v + 2] + 0.0);
            ref int slot = ref CollectionsMarshal.GetValueRefOrAddDefault(place, key, out bool known);
            if (!known)
                slot = v;
            welded[v] = slot;
        }
        return welded;
    }
}
