namespace CalibGeom.TestObjects;

/// <summary>
/// One joint of a test object as it is made: box <see cref="Number"/> in the pocket of the next. Immutable.
/// </summary>
/// <param name="Number">1 lies between box 1 and box 2.</param>
/// <param name="WantedClearance">The clearance per side that the spec asks for, mm.</param>
/// <param name="Clearance">The clearance per side made, mm.</param>
public sealed record JointPlan(int Number, PerAxis WantedClearance, PerAxis Clearance)
{
    /// <summary>
    /// How far the inner box, pushed in until its taper sits on the well's rim, is shifted along Z from where it is
    /// printed to where it would stand over the outer box as printed, mm.
    /// </summary>
    public required double Lift { get; init; }

    /// <summary>
    /// Lower end of the height over which both gauge bands face each other when seated, mm above the plate in the outer
    /// box's place.
    /// </summary>
    public required double EngagedFrom { get; init; }

    /// <summary>Upper end of that height, mm. Not above <see cref="EngagedFrom"/> when the bands do not meet.</summary>
    public required double EngagedTo { get; init; }

    /// <summary>How far the seated inner box stands out of the pocket, mm.</summary>
    public required double Protrusion { get; init; }

    /// <summary>The tighter of the two clearances, which the fit is felt by, mm.</summary>
    public double Tighter => Math.Min(Clearance.X, Clearance.Y);
}
