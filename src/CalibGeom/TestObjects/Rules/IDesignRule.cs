using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>One thing that a design must keep to.</summary>
internal interface IDesignRule
{
    /// <summary>The findings; none when the design keeps to the rule.</summary>
    IEnumerable<Finding> Check(ObjectPlan plan);
}
