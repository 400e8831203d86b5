using CalibGeom.Planar;

namespace CalibGeom.Meshes;

/// <summary>
/// A plane with two axes in it. The first axis is horizontal; both and the normal form a right-handed set. A horizontal
/// plane has the axes of space (mirrored in Y when its normal points down). Immutable and safe to share between
/// threads.
/// </summary>
public sealed class SectionFrame
{
    /// <summary>A frame.</summary>
    /// <param name="origin">Any point of the plane, mm; it becomes the frame's origin.</param>
    /// <param name="normal">Any vector square to the plane; its length does not matter.</param>
    /// <exception cref="ArgumentException">The normal has no length or is not finite.</exception>
    public SectionFrame(Vector3D origin, Vector3D normal)
    {
        double length = normal.Length;
        if (!(length > 0) || !double.IsFinite(length))
            throw new ArgumentException(
                $"A plane's normal needs a finite length above 0; it is {normal}.",
                nameof(normal)
            );
        Origin = origin;
        Normal = normal * (1 / length);
        var horizontal = new Vector3D(-Normal.Y, Normal.X, 0);
        double slope = horizontal.Length;
        AxisX = slope > 1e-9 ? horizontal * (1 / slope) : new Vector3D(1, 0, 0);
        AxisY = slope > 1e-9 ? Vector3D.Cross(Normal, AxisX) : new Vector3D(0, Math.Sign(Normal.Z), 0);
    }

    /// <summary>The point that has the coordinates 0, 0 in the frame.</summary>
    public Vector3D Origin { get; }

    /// <summary>The unit normal.</summary>
    public Vector3D Normal { get; }

    /// <summary>The first axis, a horizontal unit vector.</summary>
    public Vector3D AxisX { get; }

    /// <summary>The second axis, a unit vector.</summary>
    public Vector3D AxisY { get; }

    /// <summary>A point of space, moved square onto the plane, in the frame.</summary>
    /// <param name="point">mm.</param>
    public Vector2D ToPlane(Vector3D point)
    {
        Vector3D d = point - Origin;
        return new(Vector3D.Dot(d, AxisX), Vector3D.Dot(d, AxisY));
    }

    /// <summary>A point of the frame, in space.</summary>
    /// <param name="point">mm.</param>
    public Vector3D ToSpace(Vector2D point) => Origin + AxisX * point.X + AxisY * point.Y;
}
