using CalibGeom.Planar;

namespace CalibGeom.Meshes;

/// <summary>
/// One closed line in which a plane cuts a mesh, with material on its left seen against the plane's normal:
/// counter-clockwise round material, clockwise round a hole. Immutable and safe to share between threads.
/// </summary>
public sealed class SectionContour
{
    private readonly Vector3D[] points;
    private readonly Vector2D[] planePoints;

    internal SectionContour(Vector3D[] points, Vector2D[] planePoints, bool isClosed)
    {
        this.points = points;
        this.planePoints = planePoints;
        IsClosed = isClosed;
        SignedArea = Vector2D.SignedArea(planePoints);
    }

    /// <summary>The vertices in space, mm; the last joins the first.</summary>
    public ReadOnlySpan<Vector3D> Points => points;

    /// <summary>The same vertices in the section's own frame, mm.</summary>
    public ReadOnlySpan<Vector2D> PlanePoints => planePoints;

    /// <summary>
    /// Whether the mesh closes the line; false when the mesh is open there and the last vertex was joined to the first.
    /// </summary>
    public bool IsClosed { get; }

    /// <summary>The area inside, mm2: positive round material, negative round a hole.</summary>
    public double SignedArea { get; }
}
