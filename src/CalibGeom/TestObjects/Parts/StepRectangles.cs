using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// Prisms on axis-parallel rectangles given along and across a part's own length, which lies along X or Y.
/// </summary>
/// <param name="X">The part's centre, mm.</param>
/// <param name="Y">The part's centre, mm.</param>
/// <param name="AlongY">Whether the part's length lies along Y (turned counter-clockwise from X).</param>
internal readonly record struct StepRectangles(double X, double Y, bool AlongY)
{
    /// <summary>A prism from s0 to s1 along and t0 to t1 across the part, z0 to z1 upward, mm.</summary>
    internal Loft Prism(double s0, double s1, double t0, double t1, double z0, double z1) =>
        AlongY
            ? Loft.Prism(Outline.Rectangle(X - t1, Y + s0, X - t0, Y + s1), z0, z1)
            : Loft.Prism(Outline.Rectangle(X + s0, Y + t0, X + s1, Y + t1), z0, z1);
}
