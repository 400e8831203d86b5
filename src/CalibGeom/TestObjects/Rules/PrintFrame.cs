using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Rules;

/// <summary>From an object's own frame to how it is printed: turned by the tilt.</summary>
internal sealed class PrintFrame
{
    private readonly bool aboutX;
    private readonly double sin;
    private readonly double cos;

    internal PrintFrame(TiltSpec tilt)
    {
        aboutX = tilt.Axis == TiltAxis.X;
        (sin, cos) = Math.SinCos(tilt.Angle * Math.PI / 180);
    }

    internal Vector3D Turn(Vector3D v) =>
        aboutX
            ? new(v.X, v.Y * cos - v.Z * sin, v.Y * sin + v.Z * cos)
            : new(v.X * cos + v.Z * sin, v.Y, -v.X * sin + v.Z * cos);
}
