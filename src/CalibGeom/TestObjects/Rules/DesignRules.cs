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
    internal static IReadOnlyList<Finding> Check(ObjectPlan plan) =>
        [
            .. plan
                .Parts.SelectMany(p => p.Part.Check(p.Place))
                .Concat(BetweenParts.SelectMany(r => r.Check(plan)))
                .OrderByDescending(f => f.Severity),
        ];
}
