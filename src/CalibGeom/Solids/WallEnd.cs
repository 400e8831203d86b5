using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>
/// One end of a loft's walls: the chain of vertices that each edge became, in the ring's own direction. Edges are
/// counted through all rings, the outer first.
/// </summary>
internal sealed class WallEnd
{
    private readonly LevelVertices vertices;
    private readonly int[] starts;
    private readonly int[] numbers;
    private readonly int first;

    private WallEnd(LevelVertices vertices, int[] starts, int[] numbers, int first) =>
        (this.vertices, this.starts, this.numbers, this.first) = (vertices, starts, numbers, first);

    /// <summary>An end whose edges were laid over others, from one of them on.</summary>
    internal static WallEnd Laid(LevelVertices vertices, SnapRounding snapped, int first) =>
        new(vertices, snapped.Starts, snapped.Numbers, first);

    /// <summary>An end whose edges stay as they are.</summary>
    internal static WallEnd Kept(Region region, int level)
    {
        Outline[] rings = [.. region.Rings];
        int count = rings.Sum(r => r.Count);
        var points = new Meshes.GridPoint3D[count];
        int[] starts = new int[count + 1],
            numbers = new int[2 * count];
        int edge = 0;
        foreach (Outline ring in rings)
        {
            int begin = edge;
            foreach (GridPoint p in ring.Points)
            {
                points[edge] = new(p, level);
                (numbers[2 * edge], numbers[2 * edge + 1]) = (edge, edge + 1);
                starts[++edge] = 2 * edge;
            }
            numbers[2 * edge - 1] = begin;
        }
        return new(new LevelVertices(points), starts, numbers, 0);
    }

    /// <summary>How many vertices the chain of an edge has.</summary>
    internal int Count(int edge) => starts[first + edge + 1] - starts[first + edge];

    /// <summary>The index in the mesh of a vertex of an edge's chain.</summary>
    internal int IndexIn(MeshAssembly mesh, int edge, int i) =>
        vertices.IndexIn(mesh, numbers[starts[first + edge] + i]);
}
