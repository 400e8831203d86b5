using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts;

/// <summary>A place on one side of the plinth.</summary>
/// <param name="Side">Which side.</param>
/// <param name="Line">The side's coordinate: y of front and back, x of left and right, mm.</param>
/// <param name="At">The place along the side: x on front and back, y on left and right, mm.</param>
internal readonly record struct Edge(Side Side, double Line, double At)
{
    /// <summary>The rectangle from s0 to s1 along the side and t0 to t1 outward from it.</summary>
    internal Rect Rectangle(double s0, double s1, double t0, double t1) =>
        Side switch
        {
            Side.Back => new(At + s0, Line + t0, At + s1, Line + t1),
            Side.Front => new(At + s0, Line - t1, At + s1, Line - t0),
            Side.Right => new(Line + t0, At + s0, Line + t1, At + s1),
            _ => new(Line - t1, At + s0, Line - t0, At + s1),
        };

    /// <summary>A prism over that rectangle.</summary>
    internal Loft Prism(double s0, double s1, double t0, double t1, double z0, double z1)
    {
        Rect r = Rectangle(s0, s1, t0, t1);
        return Loft.Prism(Outline.Rectangle(r.X0, r.Y0, r.X1, r.Y1), z0, z1);
    }
}
