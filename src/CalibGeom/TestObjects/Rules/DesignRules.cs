using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>All design rules.</summary>
internal static class DesignRules
{
    private static readonly IDesignRule[] BetweenParts =
    [
        new LaneRule(),
        new SightRule(),
        new OverhangRule(),
        new TiltRule(),
        new PlateRule(),
        new BaseLayersRule(),
        new PixelRule(),
    ];

    /// <summary>What the parts' own rules and those between parts find, errors first.</summary>
    internal static IReadOnlyList<Finding> Check(ObjectPlan plan, CancellationToken cancellation)
    {
        var findings = new List<Finding>();
        foreach ((ITestPart part, PartPlace place) in plan.Parts)
            Take(part.Check(place));
        foreach (IDesignRule rule in BetweenParts)
            Take(rule.Check(plan));
        return [.. findings.OrderByDescending(f => f.Severity)];

        void Take(IEnumerable<Finding> found)
        {
            cancellation.ThrowIfCancellationRequested();
            findings.AddRange(found);
        }
    }
}
