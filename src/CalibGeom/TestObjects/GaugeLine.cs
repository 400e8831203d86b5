using CalibGeom.Meshes;

namespace CalibGeom.TestObjects;

/// <summary>One of the lines that a size is measured along; a size may have several.</summary>
/// <param name="Feature">The size's feature id, such as <c>box1.outside.x</c>.</param>
/// <param name="Direction">The direction of measurement, of length 1.</param>
/// <param name="From">The face at its beginning.</param>
/// <param name="To">The face at its end.</param>
public sealed record GaugeLine(string Feature, Vector3D Direction, GaugeFace From, GaugeFace To)
{
    /// <summary>The size in mm when both faces have moved out of the material.</summary>
    /// <param name="from">How far the first has moved, mm; negative when material is missing.</param>
    /// <param name="to">How far the second has moved, mm.</param>
    public double Length(double from = 0, double to = 0) =>
        Vector3D.Dot(To.Point + To.Outward * to - From.Point - From.Outward * from, Direction);
}
