using CalibGeom.Verification.Clearances;

namespace CalibGeom.Cli.Predict;

/// <summary>A joint of the user's own: sizes, and the ISO 286 fit they come from if one was named.</summary>
internal sealed record WantedJoint(double Peg, double Hole, IsoJoint? Iso);
