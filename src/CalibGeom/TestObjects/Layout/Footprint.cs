using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>One way a part may stand, in its own frame, seen from above.</summary>
/// <param name="Solids">What it covers.</param>
/// <param name="Lanes">What must stay free of others for a caliper's jaws.</param>
/// <param name="Form">Which of the part's forms this is, for the part itself to know.</param>
internal sealed record Footprint(Rect[] Solids, Rect[] Lanes, int Form = 0)
{
    internal Rect Bounds { get; } = Solids.Aggregate((a, b) => a.Join(b));

    internal Footprint Move(double dx, double dy) =>
        new(Array.ConvertAll(Solids, r => r.Move(dx, dy)), Array.ConvertAll(Lanes, r => r.Move(dx, dy)), Form);
}
