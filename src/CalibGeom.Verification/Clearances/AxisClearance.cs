using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>The clearance of one joint along one axis, mm per side. Immutable.</summary>
public sealed record AxisClearance
{
    /// <summary>The fit, such as <c>joint1.fit</c> or that of a part of one's own.</summary>
    public required FeatureId Fit { get; init; }

    /// <summary><c>x</c> or <c>y</c>.</summary>
    public required string Axis { get; init; }

    /// <summary>The designed clearance.</summary>
    public required double Design { get; init; }

    /// <summary>
    /// The best estimate from everything that was read and felt: of the print that was read, or of the mean of several.
    /// </summary>
    public required Estimate Clearance { get; init; }

    /// <summary>What the mean of all prints at these settings has.</summary>
    public required Estimate Mean { get; init; }

    /// <summary>What the next print of the same object should have.</summary>
    public required Estimate Next { get; init; }

    /// <summary>From the two faces alone, when both were read and neither is a gross error; by sizes alone.</summary>
    public required Estimate? Direct { get; init; }

    /// <summary>From scale and growth, by sizes alone.</summary>
    public required Estimate Model { get; init; }

    /// <summary>
    /// Two-sided probability that direct and model differ as much by chance; null without a direct value.
    /// </summary>
    public required double? Agreement { get; init; }

    /// <summary>What the uncertainty of <see cref="Clearance"/> is made of.</summary>
    public required UncertaintyBudget Budget { get; init; }

    /// <summary>Whether it lies between the limits that were set; null without limits.</summary>
    public ConformityDecision? Decision { get; init; }

    /// <summary>How well the prints keep between the limits; null without limits or with fewer than five.</summary>
    public Capability? Capability { get; init; }

    /// <summary>Estimate less design, mm.</summary>
    public double Deviation => Clearance.Value - Design;
}
