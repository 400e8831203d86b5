namespace CalibGeom.Verification.Clearances;

/// <summary>A joint of one's own along one axis, as the next print would give it.</summary>
/// <param name="Axis"><c>x</c> or <c>y</c>.</param>
/// <param name="Clearance">Clearance per side, mm.</param>
/// <param name="Peg">Size of the peg, mm.</param>
/// <param name="Hole">Size of the hole, mm.</param>
/// <param name="PegGrade">ISO 286 grade of the peg's deviation, or null.</param>
/// <param name="HoleGrade">ISO 286 grade of the hole's deviation, or null.</param>
/// <param name="HoleForWanted">The hole to design along this axis for the wanted clearance with the peg, mm.</param>
/// <param name="PegForWanted">The peg to design along this axis for the wanted clearance with the hole, mm.</param>
public sealed record OwnJointAxis(
    string Axis,
    Estimate Clearance,
    Estimate Peg,
    Estimate Hole,
    int? PegGrade,
    int? HoleGrade,
    double HoleForWanted,
    double PegForWanted
);
