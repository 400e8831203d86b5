using CalibGeom.Verification.Decisions;

namespace CalibGeom.Verification.Clearances;

/// <summary>A joint of one's own along one axis, as the next print would give it. Immutable.</summary>
public sealed record OwnJointAxis
{
    /// <summary><c>x</c> or <c>y</c>.</summary>
    public required string Axis { get; init; }

    /// <summary>Clearance per side, mm.</summary>
    public required Estimate Clearance { get; init; }

    /// <summary>Size of the peg, mm.</summary>
    public required Estimate Peg { get; init; }

    /// <summary>Size of the hole, mm.</summary>
    public required Estimate Hole { get; init; }

    /// <summary>ISO 286 grade of the peg's deviation.</summary>
    public required ToleranceGrade PegGrade { get; init; }

    /// <summary>ISO 286 grade of the hole's deviation.</summary>
    public required ToleranceGrade HoleGrade { get; init; }

    /// <summary>The hole to design along this axis for the wanted clearance with the peg, mm.</summary>
    public required Estimate HoleForWanted { get; init; }

    /// <summary>The peg to design along this axis for the wanted clearance with the hole, mm.</summary>
    public required Estimate PegForWanted { get; init; }

    /// <summary>Whether it lies between the limits that were set; null without limits.</summary>
    public ConformityDecision? Decision { get; init; }
}
