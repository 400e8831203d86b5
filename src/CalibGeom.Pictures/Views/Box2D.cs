using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Views;

/// <summary>A rectangle in the picture's plane, Y up, mm.</summary>
internal readonly record struct Box2D(double Left, double Bottom, double Right, double Top)
{
    internal double Width => Right - Left;

    internal double Height => Top - Bottom;

    /// <summary>What a mesh takes up, seen from a direction.</summary>
    internal static Box2D Round(TriangleMesh mesh, ViewDirection view) =>
        Round(Enumerable.Range(0, mesh.VertexCount).Select(v => view.Project(mesh.Vertex(v))));

    internal static Box2D Round(IEnumerable<Vector3D> seen) => Round(seen.Select(p => new Vector2D(p.X, p.Y)));

    internal static Box2D Round(IEnumerable<Vector2D> points)
    {
        var box = new Box2D(
            double.PositiveInfinity,
            double.PositiveInfinity,
            double.NegativeInfinity,
            double.NegativeInfinity
        );
        foreach ((double x, double y) in points)
            box = new Box2D(
                Math.Min(box.Left, x),
                Math.Min(box.Bottom, y),
                Math.Max(box.Right, x),
                Math.Max(box.Top, y)
            );
        return box.Left <= box.Right ? box : new Box2D(0, 0, 0, 0);
    }

    internal Box2D Grow(double by) => new(Left - by, Bottom - by, Right + by, Top + by);
}
