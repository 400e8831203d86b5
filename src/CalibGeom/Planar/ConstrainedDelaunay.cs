namespace CalibGeom.Planar;

/// <summary>
/// A Delaunay triangulation of distinct grid points in which required edges are present. Points are inserted one by one
/// with Lawson's flips,
/// required edges by flipping what crosses them (Sloan, Computers and Structures 47 (1993) 441). All decisions are
/// exact. No points are
/// added but the four corners of a square round everything.
/// </summary>
internal sealed partial class ConstrainedDelaunay
{
    private readonly GridPoint[] points;
    private readonly int realCount;
    private readonly List<int> corners = [];
    private readonly List<int> neighbours = [];
    private readonly int[] triangleAt;
    private readonly HashSet<(int, int)> required = [];
    private int last;

    /// <summary>The Delaunay triangulation of distinct points.</summary>
    internal ConstrainedDelaunay(IReadOnlyList<GridPoint> distinct)
    {
        realCount = distinct.Count;
        points = [.. distinct, .. Frame(distinct)];
        triangleAt = new int[points.Length];
        int n = realCount;
        Append(n, n + 1, n + 2, -1, 1, -1);
        Append(n, n + 2, n + 3, -1, -1, 0);
        foreach (int p in InsertionOrder())
            Insert(p);
    }

    /// <summary>The number of triangles, those outside included.</summary>
    internal int Count => corners.Count / 3;

    /// <summary>A triangle at the frame.</summary>
    internal int OutsideTriangle => triangleAt[realCount];

    /// <summary>
    /// The corners of a triangle, counter-clockwise; indices from the number of points on are the frame's.
    /// </summary>
    internal (int A, int B, int C) Corners(int t) => (corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]);

    /// <summary>The triangle across a side (-1 for none), and the side as seen from t, counter-clockwise.</summary>
    internal (int Neighbour, int From, int To) Across(int t, int side) =>
        (neighbours[3 * t + side], corners[3 * t + (side + 1) % 3], corners[3 * t + (side + 2) % 3]);

    private static GridPoint[] Frame(IReadOnlyList<GridPoint> distinct)
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

    /// <summary>
    /// A boustrophedon over square bins: neighbours in the order are near each other, and the order never changes.
    /// </summary>
    private IEnumerable<int> InsertionOrder()
    {
        int bins = Math.Max(1, (int)Math.Sqrt(Math.Sqrt(realCount)));
        GridPoint low = points[realCount],
            high = points[realCount + 2];
        long width = (long)high.X - low.X + 1,
            height = (long)high.Y - low.Y + 1;
        return Enumerable
            .Range(0, realCount)
            .Select(i =>
            {
                int row = (int)((points[i].Y - (long)low.Y) * bins / height),
                    column = (int)((points[i].X - (long)low.X) * bins / width);
                return (Bin: row * bins + (row % 2 == 0 ? column : bins - 1 - column), Index: i);
            })
            .Order()
            .Select(p => p.Index);
    }

    private int Append(int a, int b, int c, int na, int nb, int nc)
    {
        int t = Count;
        corners.AddRange([a, b, c]);
        neighbours.AddRange([na, nb, nc]);
        Touch(t);
        return t;
    }

    private void Set(int t, int a, int b, int c, int na, int nb, int nc)
    {
        (corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]) = (a, b, c);
        (neighbours[3 * t], neighbours[3 * t + 1], neighbours[3 * t + 2]) = (na, nb, nc);
        Touch(t);
    }

    private void Touch(int t)
    {
        for (int i = 0; i < 3; i++)
            triangleAt[corners[3 * t + i]] = t;
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

    private static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);
}
