using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// The shadow of a coupon turned by 0 or 90 degrees, in its own coordinates, and the largest disc known to lie in it.
/// </summary>
internal sealed class Footprint
{
    private Footprint(PlanarTriangles tree, int turn)
    {
        (Tree, Turn) = (tree, turn);
        ReadOnlySpan<double> t = tree.Triangles;
        for (int i = 0; i < t.Length; i += 6)
        {
            (double x, double y, double radius) = Incircle(t.Slice(i, 6));
            if (radius > DiscRadius)
                (DiscX, DiscY, DiscRadius) = (x, y, radius);
        }
    }

    internal PlanarTriangles Tree { get; }

    internal int Turn { get; }

    internal double DiscX { get; }

    internal double DiscY { get; }

    internal double DiscRadius { get; }

    internal double CentreX => (Tree.MinX + Tree.MaxX) / 2;

    internal double CentreY => (Tree.MinY + Tree.MaxY) / 2;

    internal double Width => Tree.MaxX - Tree.MinX;

    internal double Depth => Tree.MaxY - Tree.MinY;

    /// <summary>The footprint of a mesh in both turns.</summary>
    /// <param name="mesh">The coupon.</param>
    internal static Footprint[] BothTurns(TriangleMesh mesh)
    {
        double[] flat = Project(mesh);
        flat = ConvexShadow.Of(new PlanarTriangles(flat)) ?? flat;
        var turned = new double[flat.Length];
        for (int i = 0; i < flat.Length; i += 2)
            (turned[i], turned[i + 1]) = (-flat[i + 1], flat[i]);
        return [new(new PlanarTriangles(flat), 0), new(new PlanarTriangles(turned), 90)];
    }

    /// <summary>The same shape in another size, to learn how much too large a coupon is.</summary>
    internal Footprint Scaled(double factor)
    {
        double[] scaled = Tree.Triangles.ToArray();
        for (int i = 0; i < scaled.Length; i++)
            scaled[i] *= factor;
        return new(new PlanarTriangles(scaled), Turn);
    }

    /// <summary>
    /// On a closed surface the facets that look up have the whole shadow; on an open one all facets are taken.
    /// </summary>
    private static double[] Project(TriangleMesh mesh)
    {
        bool closed = mesh.IsClosed;
        var flat = new List<double>(2 * mesh.TriangleCount);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            double area = (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
            if (closed && area <= 0)
                continue;
            flat.AddRange([a.X, a.Y, b.X, b.Y, c.X, c.Y]);
        }
        return flat.Count > 0
            ? flat.ToArray()
            : throw new ArgumentException("A coupon without a face that looks up has no shadow.", nameof(mesh));
    }

    private static (double X, double Y, double Radius) Incircle(ReadOnlySpan<double> t)
    {
        double a = double.Hypot(t[4] - t[2], t[5] - t[3]),
            b = double.Hypot(t[0] - t[4], t[1] - t[5]),
            c = double.Hypot(t[2] - t[0], t[3] - t[1]);
        double sum = a + b + c;
        if (!(sum > 0))
            return (t[0], t[1], 0);
        double doubled = Math.Abs((t[2] - t[0]) * (t[5] - t[1]) - (t[3] - t[1]) * (t[4] - t[0]));
        return ((a * t[0] + b * t[2] + c * t[4]) / sum, (a * t[1] + b * t[3] + c * t[5]) / sum, doubled / sum * 0.999);
    }
}
