namespace CalibGeom.Meshes;

public sealed partial class TriangleMesh
{
    // Found together at first use and kept: each needs the edges of the whole mesh.
    private MeshCounts? counts;

    private MeshCounts Counts => counts ??= CountAll();

    /// <summary>
    /// Vertices minus edges plus triangles. Vertices that no triangle uses do not count, and corners are the same
    /// vertex only when they share an index (<see cref="Weld"/> makes them share it). A closed mesh has 2 for each
    /// component less 2 for each hole through it.
    /// </summary>
    public int EulerCharacteristic => Counts.Vertices - Counts.Edges + TriangleCount;

    /// <summary>
    /// The number of pieces: triangles that share an edge belong to one piece, those that share only a vertex do not.
    /// </summary>
    public int ComponentCount => Counts.Components;

    /// <summary>
    /// The number of holes through the body, summed over all components: 0 for a box, 1 for a tube or a torus.
    /// </summary>
    /// <exception cref="InvalidOperationException">The mesh is not closed and manifold: an edge has not exactly two
    /// triangles with opposite directions, a triangle repeats a vertex, or two fans of triangles meet in one
    /// vertex.</exception>
    public int Genus =>
        !Counts.Closed
            ? throw new InvalidOperationException(
                "Genus needs a closed mesh: each edge in two triangles with opposite directions."
            )
        : Counts.Fans != Counts.Vertices
            ? throw new InvalidOperationException(
                "Genus needs a manifold mesh: two fans of triangles meet in one vertex."
            )
        : ComponentCount - EulerCharacteristic / 2;

    /// <summary>
    /// Whether every edge lies in exactly two triangles with opposite directions and no triangle repeats a vertex. A
    /// mesh without triangles is not closed.
    /// </summary>
    public bool IsClosed => Counts.Closed;

    private MeshCounts CountAll()
    {
        var edges = new MeshEdges(triangles, VertexCount);
        Components(edges, out int components);
        Fans(edges, out int fans);
        return new MeshCounts(UsedVertices(), edges.Count, components, fans, ClosedOver(edges));
    }

    /// <summary>
    /// The same surface with one vertex for each position: vertices with the same three numbers (-0 is 0) get one
    /// index, in order of first use by a triangle, and vertices that no triangle uses vanish. Triangles keep their
    /// order.
    /// </summary>
    public TriangleMesh Weld() => Welded(CancellationToken.None);

    internal TriangleMesh Welded(CancellationToken cancellation)
    {
        var welder = new VertexWelder(VertexCount);
        var map = new int[VertexCount];
        var welded = new int[triangles.Length];
        for (int i = 0; i < triangles.Length; i++)
        {
            if ((i & 0xFFFF) == 0)
                cancellation.ThrowIfCancellationRequested();
            int v = triangles[i];
            if (map[v] == 0)
                map[v] = 1 + welder.Add(coordinates[3 * v], coordinates[3 * v + 1], coordinates[3 * v + 2]);
            welded[i] = map[v] - 1;
        }
        return welder.ToMesh(welded);
    }

    /// <summary>The component number of each triangle, numbered by their first triangles.</summary>
    internal int[] Components(MeshEdges edges, out int count)
    {
        var sets = new UnionFind(TriangleCount);
        for (int e = 0; e < edges.Count; e++)
        for (int i = 1; i < edges.Uses(e); i++)
            sets.Join(edges.HalfEdge(e, 0) / 3, edges.HalfEdge(e, i) / 3);
        return sets.Number(out count);
    }

    /// <summary>
    /// The fan number of each corner: corners at one vertex whose triangles hang together by edges at that vertex.
    /// </summary>
    internal int[] Fans(MeshEdges edges, out int count)
    {
        var sets = new UnionFind(triangles.Length);
        for (int e = 0; e < edges.Count; e++)
        {
            int first = edges.HalfEdge(e, 0);
            for (int i = 1; i < edges.Uses(e); i++)
            {
                int other = edges.HalfEdge(e, i);
                bool opposite = triangles[first] != triangles[other];
                sets.Join(first, opposite ? MeshEdges.Next(other) : other);
                sets.Join(MeshEdges.Next(first), opposite ? other : MeshEdges.Next(other));
            }
        }
        return sets.Number(out count);
    }

    private bool ClosedOver(MeshEdges edges)
    {
        if (TriangleCount == 0 || edges.Count * 2 != triangles.Length)
            return false;
        for (int e = 0; e < edges.Count; e++)
            if (edges.Uses(e) != 2 || triangles[edges.HalfEdge(e, 0)] == triangles[edges.HalfEdge(e, 1)])
                return false;
        return true;
    }

    private int UsedVertices()
    {
        var used = new bool[VertexCount];
        int count = 0;
        foreach (int v in triangles)
        {
            if (!used[v])
                count++;
            used[v] = true;
        }
        return count;
    }
}
