using CalibGeom.Meshes;

namespace CalibGeom.TestObjects;

/// <summary>
/// One of the lines that a size is measured along; a size may have several. Design, light and comparison with a mesh
/// all take a size from its lines. Immutable.
/// </summary>
/// <param name="Feature">The size that it belongs to, such as <c>box1.outside.x</c>.</param>
/// <param name="Direction">The direction of measurement, of length 1.</param>
/// <param name="From">The face at its beginning.</param>
/// <param name="To">The face at its end.</param>
public sealed record GaugeLine(FeatureId Feature, Vector3D Direction, GaugeFace From, GaugeFace To)
{
    /// <summary>What a face is free ahead at least where nothing else is said, mm.</summary>
    internal const double Clear = 0.5;

    /// <summary>
    /// Whether the faces belong to a round section, whose size is the mean over its lines; the largest of the lines
    /// else. Default false.
    /// </summary>
    public bool Round { get; init; }

    /// <summary>Whether material lies between the faces, as between a caliper's outside jaws.</summary>
    public bool IsSolid => Vector3D.Dot(To.Outward, Direction) > 0 && Vector3D.Dot(From.Outward, Direction) < 0;

    /// <summary>Whether a gap lies between the faces. Neither holds of a step from one level to another.</summary>
    public bool IsGap => Vector3D.Dot(To.Outward, Direction) < 0 && Vector3D.Dot(From.Outward, Direction) > 0;

    /// <summary>The size in mm when both faces have moved out of the material.</summary>
    /// <param name="from">How far the first has moved, mm; negative when material is missing.</param>
    /// <param name="to">How far the second has moved, mm.</param>
    public double Length(double from = 0, double to = 0) =>
        Vector3D.Dot(To.Point + To.Outward * to - From.Point - From.Outward * from, Direction);

    /// <summary>A line across material, from outer face to outer face.</summary>
    /// <param name="feature">The size that it belongs to.</param>
    /// <param name="middle">Half way between the faces, mm.</param>
    /// <param name="along">The direction of measurement, of length 1.</param>
    /// <param name="size">From face to face, mm.</param>
    /// <param name="thickness">How thick the material behind each face is, mm; the size where it is solid
    /// throughout.</param>
    public static GaugeLine Outside(FeatureId feature, Vector3D middle, Vector3D along, double size, double thickness)
    {
        ArgumentNullException.ThrowIfNull(feature);
        return new(
            feature,
            along,
            new GaugeFace(middle - along * (size / 2), along * -1, thickness, Clear),
            new GaugeFace(middle + along * (size / 2), along, thickness, Clear)
        );
    }

    /// <summary>A line across a gap, from inner face to inner face.</summary>
    /// <param name="feature">The size that it belongs to.</param>
    /// <param name="middle">Half way between the faces, mm.</param>
    /// <param name="along">The direction of measurement, of length 1.</param>
    /// <param name="size">From face to face, mm.</param>
    /// <param name="thickness">How thick the material behind each face is, mm.</param>
    public static GaugeLine Inside(FeatureId feature, Vector3D middle, Vector3D along, double size, double thickness)
    {
        ArgumentNullException.ThrowIfNull(feature);
        return new(
            feature,
            along,
            new GaugeFace(middle - along * (size / 2), along, thickness, size),
            new GaugeFace(middle + along * (size / 2), along * -1, thickness, size)
        );
    }
}
