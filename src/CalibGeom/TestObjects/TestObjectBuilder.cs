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
    /// <param name="mark">How many small dots are raised on the plinth and on every box, 0 to 6, so that loose
    /// boxes from several prints are told apart. Not part of the spec or its digest. Default 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mark is out of range.</exception>
    /// <returns>The object; without a solid when an error among its findings makes one impossible.</returns>
    public static TestObject Build(TestObjectSpec spec, int mark = 0)
    {
        ArgumentNullException.ThrowIfNull(spec);
        ArgumentOutOfRangeException.ThrowIfNegative(mark);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mark, MarkDots.Most);
        var plan = new ObjectPlan(spec, mark);
        IReadOnlyList<Finding> findings = DesignRules.Check(plan);
        bool sound = findings.All(f => f.Severity != Severity.Error);
        return new TestObject(plan, () => SolidOf(plan, sound), findings);
    }

    /// <summary>A design with errors may have no solid; one without must.</summary>
    private static Solid? SolidOf(ObjectPlan plan, bool sound)
    {
        try
        {
            return plan.Fault is { } fault ? throw fault : new Solid(plan.Bodies.SelectMany(b => b.Lofts));
        }
        catch (ArgumentException) when (!sound)
        {
            return null;
        }
    }
}
