namespace CalibGeom.Verification.Clearances;

/// <summary>The numbers under which a state of knowledge holds one joint's clearance along one axis.</summary>
internal sealed record JointAxisQuantities(string Axis, Face Peg, Face Pocket, int Read, int Mean, int Next);
