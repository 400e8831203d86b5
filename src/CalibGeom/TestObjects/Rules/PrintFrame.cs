using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Rules;

/// <summary>From an object's own frame to how it is printed: turned by the tilt.</summary>
internal sealed class PrintFrame(TiltSpec tilt)
{
    private readonly Affine3D turn = Tilting.TurnOf(tilt.Axis, tilt.Angle);

    internal Vector3D Turn(Vector3D v) => turn.Apply(v);
}
