using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// Where a part stands: its frame's origin on the plinth and how that frame is turned. Heights are not turned or moved:
/// they count from the plate, before any tilt of the whole object. Immutable.
/// </summary>
/// <param name="X">mm from the plinth's centre.</param>
/// <param name="Y">mm from the plinth's centre.</param>
/// <param name="Quarters">By how many quarters the frame is turned counter-clockwise, 0 to 3.</param>
/// <param name="BaseZ">Top of the plinth, mm above the plate, on the grid.</param>
/// <param name="Spec">What the whole object is to be.</param>
public sealed record PartPlace(double X, double Y, int Quarters, double BaseZ, TestObjectSpec Spec)
{
    /// <summary>How many dots mark this print of the object, 0 to 6; no part of the spec. Default 0.</summary>
    public int Mark { get; init; }

    /// <summary>A rectangle of the part's frame in its place, mm.</summary>
    /// <param name="x0">Least x in the part's frame.</param>
    /// <param name="y0">Least y.</param>
    /// <param name="x1">Greatest x.</param>
    /// <param name="y1">Greatest y.</param>
    /// <exception cref="ArgumentException">The rectangle has no area or is too large for the grid.</exception>
    public Outline Rectangle(double x0, double y0, double x1, double y1)
    {
        Rect r = new Rect(x0, y0, x1, y1).Turn(Quarters).Move(X, Y);
        return Outline.Rectangle(r.X0, r.Y0, r.X1, r.Y1);
    }

    /// <summary>A point of the part's frame in its place, mm.</summary>
    /// <param name="x">In the part's frame.</param>
    /// <param name="y">In the part's frame.</param>
    /// <param name="z">Above the plate.</param>
    public Vector3D Point(double x, double y, double z) => new Vector3D(X, Y, z) + Direction(x, y);

    /// <summary>A level direction of the part's frame as it lies in its place.</summary>
    /// <param name="x">In the part's frame.</param>
    /// <param name="y">In the part's frame.</param>
    public Vector3D Direction(double x, double y) =>
        (Quarters & 3) switch
        {
            0 => new(x, y, 0),
            1 => new(-y, x, 0),
            2 => new(-x, -y, 0),
            _ => new(y, -x, 0),
        };

    /// <summary>The nearest grid point to the frame's origin.</summary>
    public GridPoint Centre => GridPoint.FromMillimetres(X, Y);
}
