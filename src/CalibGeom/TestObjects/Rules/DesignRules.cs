using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>All design rules.</summary>
internal static class DesignRules
{
    private static readonly IDesignRule[] All = [];

    /// <summary>What the rules find, errors first, then in the order of the rules.</summary>
    internal static IReadOnlyList<Finding> Check(ObjectPlan plan) =>
        [.. All.SelectMany(r => r.Check(plan)).OrderByDescending(f => f.Severity)];
}
