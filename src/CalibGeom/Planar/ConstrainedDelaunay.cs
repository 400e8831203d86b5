namespace CalibGeom.Planar;

/// <summary>
/// A Delaunay triangulation of distinct grid points in which required edges are present. Points are inserted one by one
/// with Lawson's flips, required edges by flipping what crosses them (Sloan, Computers and Structures 47 (1993) 441).
/// All decisions are exact. No points are added but the four corners of a square round everything.
/// </summary>
internal sealed partial class ConstrainedDelaunay
{
    private readonly GridPoint[] points;
    private readonly int realCount;
    private readonly int[] corners;
    private readonly int[] neighbours;
    private readonly int[] triangleAt;
    private readonly Stack<(int Triangle, int Vertex)> suspects = new();
    private readonly Queue<(int, int)> crossing = new();
    private readonly List<(int, int)> fresh = [];
    private int last;

    /// <summary>The Delaunay triangulation of distinct points.</summary>
    internal ConstrainedDelaunay(GridPoint[] distinct)
    {
        realCount = distinct.Length;
        points = [.. distinct, .. Frame(distinct)];
        triangleAt = new int[points.Length];
        // A frame of two triangles, and two more for each point.
        corners = new int[6 * (realCount + 1)];
        neighbours = new int[6 * (realCount + 1)];
        int n = realCount;
        Append(n, n + 1, n + 2, -1, 1, -1);
        Append(n, n + 2, n + 3, -1, -1, 0);
        foreach (int p in InsertionOrder.Of(distinct, points[n], points[n + 2]))
            Insert(p);
    }

    /// <summary>The number of triangles, those outside included.</summary>
    internal int Count { get; private set; }

    /// <summary>A triangle at the frame.</summary>
    internal int OutsideTriangle => triangleAt[realCount];

    /// <summary>
    /// The corners of a triangle, counter-clockwise; indices from the number of points on are the frame's.
    /// </summary>
    internal (int A, int B, int C) Corners(int t) => (corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]);

    /// <summary>The triangle across a side (-1 for none), and the side as seen from t, counter-clockwise.</summary>
    internal (int Neighbour, int From, int To) Across(int t, int side) =>
        (neighbours[3 * t + side], corners[3 * t + (side + 1) % 3], corners[3 * t + (side + 2) % 3]);

    private static GridPoint[] Frame(GridPoint[] distinct)
    {
        int minX = distinct.Min(p => p.X),
            maxX = distinct.Max(p => p.X),
            minY = distinct.Min(p => p.Y),
            maxY = distinct.Max(p => p.Y);
        int margin = Math.Max(maxX - minX, maxY - minY) / 2 + 16;
        return
        [
            new(minX - margin, minY - margin),
            new(maxX + margin, minY - margin),
            new(maxX + margin, maxY + margin),
            new(minX - margin, maxY + margin),
        ];
    }

    private int Append(int a, int b, int c, int na, int nb, int nc)
    {
        int t = Count++;
        Set(t, a, b, c, na, nb, nc);
        return t;
    }

    private void Set(int t, int a, int b, int c, int na, int nb, int nc)
    {
        Span<int> own = corners.AsSpan(3 * t, 3),
            beside = neighbours.AsSpan(3 * t, 3);
        (own[0], own[1], own[2]) = (a, b, c);
        (beside[0], beside[1], beside[2]) = (na, nb, nc);
        triangleAt[a] = triangleAt[b] = triangleAt[c] = t;
    }

    private void Replace(int t, int oldNeighbour, int newNeighbour)
    {
        if (t < 0)
            return;
        for (int i = 0; i < 3; i++)
            if (neighbours[3 * t + i] == oldNeighbour)
            {
                neighbours[3 * t + i] = newNeighbour;
                return;
            }
    }

    private int IndexOf(int t, int vertex) =>
        corners[3 * t] == vertex ? 0
        : corners[3 * t + 1] == vertex ? 1
        : corners[3 * t + 2] == vertex ? 2
        : -1;

    private int SideTo(int t, int neighbour) =>
        neighbours[3 * t] == neighbour ? 0
        : neighbours[3 * t + 1] == neighbour ? 1
        : 2;

    private static (int Low, int High) Key(int a, int b) => a < b ? (a, b) : (b, a);
}
