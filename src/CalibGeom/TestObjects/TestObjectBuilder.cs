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
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mark is out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    /// <returns>The object; without a solid when an error among its findings makes one impossible.</returns>
    public static TestObject Build(
        TestObjectSpec spec,
        int mark = 0,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(spec);
        ArgumentOutOfRangeException.ThrowIfNegative(mark);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mark, MarkDots.Most);
        cancellation.ThrowIfCancellationRequested();
        var plan = new ObjectPlan(spec, mark);
        progress?.Report(0.5);
        IReadOnlyList<Finding> findings = DesignRules.Check(plan, cancellation);
        progress?.Report(1);
        bool sound = findings.All(f => f.Severity != Severity.Error);
        return new TestObject(plan, stop => SolidOf(plan, sound, stop), findings);
    }

    /// <summary>A design with errors may have no solid; one without must.</summary>
    private static Solid? SolidOf(ObjectPlan plan, bool sound, CancellationToken cancellation)
    {
        try
        {
            return plan.Fault is { } fault
                ? throw fault
                : new Solid([.. plan.Bodies.SelectMany(b => b.Lofts)], cancellation);
        }
        catch (ArgumentException) when (!sound)
        {
            return null;
        }
    }
}
