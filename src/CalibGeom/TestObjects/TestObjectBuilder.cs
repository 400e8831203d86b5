using CalibGeom.Solids;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects;

/// <summary>From a spec to a test object.</summary>
public static class TestObjectBuilder
{
    /// <summary>Builds a test object. Faults of the design are findings of the result, not exceptions.</summary>
    /// <param name="spec">What it is to be.</param>
    /// <returns>The object; without a solid when an error among its findings makes one impossible.</returns>
    public static TestObject Build(TestObjectSpec spec)
    {
        ArgumentNullException.ThrowIfNull(spec);
        var plan = new ObjectPlan(spec);
        IReadOnlyList<Finding> findings = DesignRules.Check(plan);
        bool sound = findings.All(f => f.Severity != Severity.Error);
        return new TestObject(plan, () => SolidOf(plan, sound), PlanFeatures.Of(plan), findings)
        {
            Boxes = PlanRecords.Boxes(plan),
            Joints = PlanRecords.Joints(plan),
            Columns = PlanRecords.Columns(plan),
            Gauges = PlanGauges.Of(plan),
            TunnelCount = plan.TunnelCount,
        };
    }

    /// <summary>A design with errors may have no solid; one without must.</summary>
    private static Solid? SolidOf(ObjectPlan plan, bool sound)
    {
        try
        {
            return plan.Fault is { } fault ? throw fault : new Solid(plan.Parts.SelectMany(p => p.Lofts));
        }
        catch (ArgumentException) when (!sound)
        {
            return null;
        }
    }
}
