using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>A part in its place.</summary>
/// <param name="Part">The part, in the way it stands.</param>
/// <param name="X">Where its frame's origin is, mm.</param>
/// <param name="Y">Where its frame's origin is, mm.</param>
/// <param name="Quarters">By how many quarters its frame is turned counter-clockwise.</param>
/// <param name="Sight">How much wider its lanes of light are than it asks for, on each side, mm.</param>
internal sealed record Placement(ITestPart Part, double X, double Y, int Quarters = 0, double Sight = 0)
{
    /// <summary>
    /// Distance between two low labels, mm: about a line's height, so that one is not read as the other.
    /// </summary>
    private const double LabelToLabel = 2.5;

    /// <summary>What it covers and keeps free, in place.</summary>
    internal PartFootprint Placed { get; } = Part.Footprint.WithSight(Sight).At(X, Y, Quarters);

    internal Placement MoveTo(double x, double y) => new(Part, x, y, Quarters, Sight);

    /// <summary>
    /// The distance kept between two parts: low labels may stand close to high parts, but not run into each other.
    /// </summary>
    internal static double Gap(PartFootprint a, PartFootprint b) =>
        a.Height == PartHeight.Low && b.Height == PartHeight.Low ? LabelToLabel
        : a.Height != PartHeight.Tall || b.Height != PartHeight.Tall ? Math.Min(a.Gap, b.Gap)
        : Math.Max(a.Gap, b.Gap);

    /// <summary>How far a part keeps from a lane, mm; null when it may stand in it.</summary>
    internal static double? DistanceFrom(LaneKind lane, PartHeight height) =>
        (lane, height) switch
        {
            (_, PartHeight.Tall) => 0,
            (LaneKind.Caliper, PartHeight.Low) => Proportions.LabelToLane,
            _ => null,
        };

    /// <summary>Whether something stands in a lane, or nearer to it than a distance above 0, mm.</summary>
    internal static bool IsTooNear(Rect lane, Rect solid, double distance) =>
        distance > 0 ? lane.DistanceTo(solid) < distance - Rect.Slack : lane.Meets(solid);
}
