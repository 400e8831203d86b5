namespace CalibGeom.Meshes;

/// <summary>
/// The distinct undirected edges of a triangle list, each with the half-edges on it in ascending order. Half-edge 3t +
/// k runs from corner k of triangle t to the next corner. A half-edge from a vertex to itself belongs to no edge.
/// </summary>
internal sealed class MeshEdges
{
    private readonly long[] keys;
    private readonly int[] starts;

    internal MeshEdges(ReadOnlySpan<int> triangles, int vertexCount, CancellationToken cancellation = default)
    {
        keys = Sorted(triangles, vertexCount, out int[] buckets, cancellation);
        cancellation.ThrowIfCancellationRequested();
        starts = Runs(buckets, vertexCount);
    }

    internal int Count => starts.Length - 1;

    /// <summary>How many half-edges lie on an edge.</summary>
    internal int Uses(int edge) => starts[edge + 1] - starts[edge];

    /// <summary>The i-th half-edge on an edge.</summary>
    internal int HalfEdge(int edge, int i) => (int)keys[starts[edge] + i];

    internal static int Next(int halfEdge) => halfEdge % 3 == 2 ? halfEdge - 2 : halfEdge + 1;

    // Buckets by the smaller vertex, then by (larger vertex, half-edge) inside each: near linear, since a vertex has
    // about six edges.
    private static long[] Sorted(
        ReadOnlySpan<int> triangles,
        int vertexCount,
        out int[] buckets,
        CancellationToken cancellation
    )
    {
        buckets = new int[vertexCount + 1];
        for (int h = 0; h < triangles.Length; h++)
        {
            int a = triangles[h],
                b = triangles[Next(h)];
            if (a != b)
                buckets[Math.Min(a, b) + 1]++;
        }
        for (int v = 0; v < vertexCount; v++)
            buckets[v + 1] += buckets[v];
        var keys = new long[buckets[vertexCount]];
        var fill = buckets.AsSpan(0, vertexCount).ToArray();
        for (int h = 0; h < triangles.Length; h++)
        {
            int a = triangles[h],
                b = triangles[Next(h)];
            if (a != b)
                keys[fill[Math.Min(a, b)]++] = (long)Math.Max(a, b) << 32 | (uint)h;
        }
        for (int v = 0; v < vertexCount; v++)
        {
            if ((v & 0xFFFF) == 0)
                cancellation.ThrowIfCancellationRequested();
            keys.AsSpan(buckets[v]..buckets[v + 1]).Sort();
        }
        return keys;
    }

    private int[] Runs(int[] buckets, int vertexCount)
    {
        var found = new int[keys.Length + 1];
        int count = 0;
        for (int v = 0; v < vertexCount; v++)
        for (int i = buckets[v]; i < buckets[v + 1]; i++)
            if (i == buckets[v] || keys[i] >> 32 != keys[i - 1] >> 32)
                found[count++] = i;
        found[count] = keys.Length;
        Array.Resize(ref found, count + 1);
        return found;
    }
}
