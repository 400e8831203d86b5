using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Views;

/// <summary>
/// For every dot of a picture which triangle is nearest and how near: a z-buffer, which needs no sorting and is right
/// also where triangles reach through each other.
/// </summary>
internal sealed class DepthMap
{
    private const double Far = double.NegativeInfinity;
    private readonly double[] nearness;
    private readonly int[] triangles;

    private DepthMap(Box2D frame, double dots)
    {
        Frame = frame;
        Dots = dots;
        Width = Math.Max(1, (int)Math.Ceiling(frame.Width * dots));
        Height = Math.Max(1, (int)Math.Ceiling(frame.Height * dots));
        nearness = new double[Width * Height];
        triangles = new int[Width * Height];
        Array.Fill(nearness, Far);
        Array.Fill(triangles, -1);
    }

    /// <summary>What of the picture's plane is kept, mm.</summary>
    internal Box2D Frame { get; }

    /// <summary>Dots a millimetre.</summary>
    internal double Dots { get; }

    internal int Width { get; }

    internal int Height { get; }

    /// <summary>The triangle seen at a dot, row 0 at the top; -1 for none.</summary>
    internal int TriangleAt(int column, int row) => triangles[row * Width + column];

    internal double NearnessAt(int column, int row) => nearness[row * Width + column];

    internal static DepthMap Of(TriangleMesh mesh, ViewDirection view, double dots, double margin)
    {
        Vector3D[] points = [.. Enumerable.Range(0, mesh.VertexCount).Select(v => view.Project(mesh.Vertex(v)))];
        var map = new DepthMap(Box2D.Round(points).Grow(margin), dots);
        ReadOnlySpan<int> corners = mesh.Triangles;
        for (int t = 0; t < mesh.TriangleCount; t++)
            map.Add(t, points[corners[3 * t]], points[corners[3 * t + 1]], points[corners[3 * t + 2]]);
        return map;
    }

    /// <summary>Whether a point lies no deeper than what is seen at its dot or a dot beside it.</summary>
    internal bool Sees(Vector3D point, double tolerance)
    {
        int column = (int)((point.X - Frame.Left) * Dots),
            row = (int)((Frame.Top - point.Y) * Dots);
        for (int r = Math.Max(0, row - 1); r <= Math.Min(Height - 1, row + 1); r++)
        for (int c = Math.Max(0, column - 1); c <= Math.Min(Width - 1, column + 1); c++)
            if (nearness[r * Width + c] <= point.Z + tolerance)
                return true;
        return false;
    }

    private void Add(int triangle, Vector3D a, Vector3D b, Vector3D c)
    {
        (double ax, double ay) = Dot(a.X, a.Y);
        (double bx, double by) = Dot(b.X, b.Y);
        (double cx, double cy) = Dot(c.X, c.Y);
        double area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
        if (Math.Abs(area) < 1e-12)
            return;
        int low = Math.Max(0, (int)Math.Ceiling(Math.Min(ay, Math.Min(by, cy)) - 0.5)),
            high = Math.Min(Height - 1, (int)Math.Floor(Math.Max(ay, Math.Max(by, cy)) - 0.5)),
            left = Math.Max(0, (int)Math.Ceiling(Math.Min(ax, Math.Min(bx, cx)) - 0.5)),
            right = Math.Min(Width - 1, (int)Math.Floor(Math.Max(ax, Math.Max(bx, cx)) - 0.5));
        for (int row = low; row <= high; row++)
        for (int column = left; column <= right; column++)
        {
            double x = column + 0.5,
                y = row + 0.5;
            double wa = ((bx - x) * (cy - y) - (by - y) * (cx - x)) / area,
                wb = ((cx - x) * (ay - y) - (cy - y) * (ax - x)) / area,
                wc = 1 - wa - wb;
            if (wa < 0 || wb < 0 || wc < 0)
                continue;
            double z = wa * a.Z + wb * b.Z + wc * c.Z;
            int at = row * Width + column;
            if (z <= nearness[at])
                continue;
            nearness[at] = z;
            triangles[at] = triangle;
        }
    }

    private Vector2D Dot(double x, double y) => ((x - Frame.Left) * Dots, (Frame.Top - y) * Dots);
}
