using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Slicing;

/// <summary>
/// Cuts a mesh into layers, each by the section at its middle height: (k + 0.5) h above the base. All layers together
/// take time in proportion to the triangles plus the triangles each layer crosses. A vertex exactly at a section's
/// height counts as above it. Immutable and safe to share between threads; each enumeration keeps its own state.
/// </summary>
public sealed class LayerSlicer
{
    private readonly TriangleMesh mesh;
    private readonly SectionEdges edges;
    private readonly int[] order;
    private readonly int[] firstOfLayer;
    private readonly int[] lastLayer;

    /// <summary>Prepares a mesh for slicing.</summary>
    /// <param name="mesh">Any mesh; where it is open, contours are closed with straight lines and counted as
    /// gaps.</param>
    /// <param name="layerHeight">mm, 0.001 to 10.</param>
    /// <param name="baseZ">Height of the plate, mm; the mesh's lowest point when left out. What lies below is not
    /// sliced.</param>
    /// <exception cref="ArgumentOutOfRangeException">The layer height or base is not finite or out of range, or there
    /// would be more than 1,000,000 layers.</exception>
    public LayerSlicer(TriangleMesh mesh, double layerHeight, double? baseZ = null)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        if (!(layerHeight >= 0.001 && layerHeight <= 10))
            throw new ArgumentOutOfRangeException(
                nameof(layerHeight),
                layerHeight,
                "A layer height must be 0.001 to 10 mm."
            );
        if (baseZ is { } z && !double.IsFinite(z))
            throw new ArgumentOutOfRangeException(nameof(baseZ), baseZ, "The height of the plate must be finite.");
        this.mesh = mesh;
        LayerHeight = layerHeight;
        bool empty = mesh.TriangleCount == 0;
        BaseZ = baseZ ?? (empty ? 0 : mesh.Bounds.Min.Z);
        double count = empty ? 0 : Math.Max(0, Math.Ceiling((mesh.Bounds.Max.Z - BaseZ) / layerHeight - 0.5));
        if (count > 1_000_000)
            throw new ArgumentOutOfRangeException(
                nameof(layerHeight),
                layerHeight,
                "The mesh would have more than 1,000,000 layers. Is it in millimetres?"
            );
        LayerCount = (int)count;
        edges = new SectionEdges(mesh);
        lastLayer = new int[mesh.TriangleCount];
        (order, firstOfLayer) = SortByFirstLayer();
    }

    /// <summary>mm.</summary>
    public double LayerHeight { get; }

    /// <summary>The height of the plate, mm.</summary>
    public double BaseZ { get; }

    /// <summary>The number of layers: all whose middle lies below the top of the mesh.</summary>
    public int LayerCount { get; }

    /// <summary>The height of a layer's section, mm.</summary>
    /// <param name="layer">From 0 at the plate.</param>
    public double SectionZ(int layer) => BaseZ + (layer + 0.5) * LayerHeight;

    /// <summary>All layers, from the plate upward; a layer without material has no contours.</summary>
    public IEnumerable<LayerContours> Slice()
    {
        var linker = new SectionLinker(edges.Count);
        var active = new List<int>();
        var points = new List<Vector2D>();
        var ends = new List<int>();
        for (int layer = 0; layer < LayerCount; layer++)
        {
            double z = SectionZ(layer);
            for (int i = firstOfLayer[layer]; i < firstOfLayer[layer + 1]; i++)
                active.Add(order[i]);
            Cut(active, z, linker);
            active.RemoveAll(t => lastLayer[t] <= layer);
            linker.Link();
            yield return Collect(layer, z, linker, points, ends);
        }
    }

    private void Cut(List<int> active, double z, SectionLinker linker)
    {
        ReadOnlySpan<double> xyz = mesh.Coordinates;
        ReadOnlySpan<int> corners = mesh.Triangles;
        foreach (int t in active)
            linker.AddTriangle(
                edges.OfTriangle.AsSpan(3 * t, 3),
                xyz[3 * corners[3 * t] + 2] >= z,
                xyz[3 * corners[3 * t + 1] + 2] >= z,
                xyz[3 * corners[3 * t + 2] + 2] >= z
            );
    }

    private LayerContours Collect(int layer, double z, SectionLinker linker, List<Vector2D> points, List<int> ends)
    {
        points.Clear();
        ends.Clear();
        int gaps = 0;
        for (int chain = 0, node = 0; chain < linker.Ends.Count; chain++)
        {
            int start = points.Count;
            for (; node < linker.Ends[chain]; node++)
            {
                Vector2D p = Crossing(edges.Ends(linker.Nodes[node]), z);
                if (points.Count == start || points[^1] != p)
                    points.Add(p);
            }
            if (points.Count > start + 1 && points[start] == points[^1])
                points.RemoveAt(points.Count - 1);
            if (points.Count - start < 3)
            {
                points.RemoveRange(start, points.Count - start);
                continue;
            }
            ends.Add(points.Count);
            if (!linker.Closed[chain])
                gaps++;
        }
        return new LayerContours(layer, z, points.ToArray(), ends.ToArray(), gaps);
    }

    private Vector2D Crossing((int Low, int High) edge, double z)
    {
        ReadOnlySpan<double> a = mesh.Coordinates.Slice(3 * edge.Low, 3),
            b = mesh.Coordinates.Slice(3 * edge.High, 3);
        if (a[2] == z)
            return new(a[0], a[1]);
        if (b[2] == z)
            return new(b[0], b[1]);
        double part = (z - a[2]) / (b[2] - a[2]);
        return new(a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part);
    }

    private (int[] Order, int[] FirstOfLayer) SortByFirstLayer()
    {
        var first = new int[mesh.TriangleCount];
        var start = new int[LayerCount + 2];
        for (int t = 0; t < first.Length; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            first[t] = FirstAbove(Math.Min(a.Z, Math.Min(b.Z, c.Z)));
            lastLayer[t] = FirstAbove(Math.Max(a.Z, Math.Max(b.Z, c.Z))) - 1;
            if (first[t] > lastLayer[t])
                first[t] = LayerCount;
            start[first[t] + 1]++;
        }
        for (int k = 0; k <= LayerCount; k++)
            start[k + 1] += start[k];
        var next = start.AsSpan().ToArray();
        var sorted = new int[first.Length];
        for (int t = 0; t < first.Length; t++)
            sorted[next[first[t]]++] = t;
        return (sorted, start);
    }

    /// <summary>The first layer whose section lies above a height.</summary>
    internal int FirstAbove(double z)
    {
        int k = (int)Math.Clamp(Math.Floor((z - BaseZ) / LayerHeight + 0.5), 0, LayerCount);
        while (k > 0 && SectionZ(k - 1) > z)
            k--;
        while (k < LayerCount && SectionZ(k) <= z)
            k++;
        return k;
    }
}
