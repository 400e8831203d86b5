using System.Runtime.CompilerServices;
using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects;

/// <summary>
/// A test object: its solid, what to measure on it, and what the design rules found. Immutable and safe to share
/// between threads.
/// </summary>
public sealed class TestObject
{
    private StrongBox<Solid?>? solid;
    private IReadOnlyList<Finding>? asPrinted;

    private TestObject(ObjectPlan plan, IReadOnlyList<Finding> findings)
    {
        Plan = plan;
        Spec = plan.Spec;
        Features = new FeatureTable(plan.Features.Select(f => f.Feature), SpecDigest.Of(plan.Spec));
        Findings = findings;
        Boxes = [.. plan.Of<BoxPart>().Select(b => b.Part.Plan(b.Place))];
        Joints = [.. plan.Of<BoxPart>().SelectMany(b => b.Part.Joints(b.Place))];
        Columns = [.. plan.Of<ColumnsPart>().SelectMany(c => c.Part.Plans(c.Place))];
        Gauges = [.. plan.Features.Where(f => f.Feature.Unit == "mm").SelectMany(f => f.Lines)];
        TunnelCount = plan.TunnelCount;
    }

    /// <summary>Designs a test object. Faults of the design are findings of the result, not exceptions.</summary>
    /// <param name="spec">What it is to be.</param>
    /// <param name="mark">How many small dots are raised on the plinth and on every box, 0 to 6, so that loose
    /// boxes from several prints are told apart. Not part of the spec or its digest. Default 0.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mark is out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    /// <returns>The object; without a solid when an error among its findings makes one impossible.</returns>
    public static TestObject Of(
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
        return new TestObject(plan, findings);
    }

    /// <summary>The spec it follows from.</summary>
    public TestObjectSpec Spec { get; }

    /// <summary>
    /// The solid before any tilt, its plinth from z = 0 upward; null when an error among the <see cref="Findings"/>
    /// makes it impossible. Made when it is first asked for.
    /// </summary>
    public Solid? Solid => SolidOf(CancellationToken.None);

    /// <summary>What to measure, count and feel.</summary>
    public FeatureTable Features { get; }

    /// <summary>What the design rules found, errors first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>
    /// The <see cref="Findings"/> and, where the object is tilted, the warnings and errors that
    /// <see cref="Inspection.MeshInspection"/> finds in its layers, errors first. Takes about as long as an inspection
    /// when it is first asked for; without a process the layers and pixels are the defaults of
    /// <see cref="Inspection.Layers.LayerSettings"/>.
    /// </summary>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public IReadOnlyList<Finding> CheckAsPrinted(
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        cancellation.ThrowIfCancellationRequested();
        asPrinted ??=
        [
            .. Findings.Concat(TiltedLayers.Check(this, progress, cancellation)).OrderByDescending(f => f.Severity),
        ];
        progress?.Report(1);
        return asPrinted;
    }

    /// <summary>The boxes, innermost first.</summary>
    public IReadOnlyList<BoxPlan> Boxes { get; }

    /// <summary>The joints between neighbouring boxes.</summary>
    public IReadOnlyList<JointPlan> Joints { get; }

    /// <summary>The columns, by number.</summary>
    public IReadOnlyList<ColumnPlan> Columns { get; }

    /// <summary>Where the sizes of the <see cref="Features"/> are measured, before any tilt.</summary>
    public IReadOnlyList<GaugeLine> Gauges { get; }

    /// <summary>
    /// Vents, tunnels and slots that go right through: the solid is one piece with the Euler characteristic 2 - 2
    /// <see cref="TunnelCount"/>.
    /// </summary>
    public int TunnelCount { get; }

    /// <summary>Where everything stands.</summary>
    internal ObjectPlan Plan { get; }

    /// <summary>Whether an error was found.</summary>
    public bool HasErrors => Findings.Any(f => f.Severity == Severity.Error);

    /// <summary>The closed surface as it stands on the plate, tilted if the spec says so.</summary>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InvalidOperationException">There is no <see cref="Solid"/>; the message names the first error
    /// found.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public TriangleMesh ToMesh(CancellationToken cancellation = default)
    {
        if (SolidOf(cancellation) is not { } body)
            throw new InvalidOperationException(
                $"This object has no solid. "
                    + $"{Findings.FirstOrDefault(f => f.Severity == Severity.Error)?.Message}".TrimEnd()
            );
        return Spec.Tilt.Angle == 0
            ? body.ToMesh(cancellation)
            : body.ToMesh(Spec.Tilt.Axis, Spec.Tilt.Angle, cancellation);
    }

    // Threads that ask at once may each make it; all solids of one plan are alike.
    private Solid? SolidOf(CancellationToken cancellation) =>
        (solid ??= new StrongBox<Solid?>(Made(cancellation))).Value;

    /// <summary>A design with errors may have no solid; one without must.</summary>
    private Solid? Made(CancellationToken cancellation)
    {
        try
        {
            return Plan.Fault is { } fault
                ? throw fault
                : new Solid([.. Plan.Bodies.SelectMany(b => b.Lofts)], cancellation);
        }
        catch (ArgumentException) when (HasErrors)
        {
            return null;
        }
    }

    /// <summary>
    /// From the coordinates of <see cref="ToMesh"/> to those of <see cref="Solid"/>, which differ when the object is
    /// tilted.
    /// </summary>
    internal Affine3D Untilt() =>
        Spec.Tilt.Angle == 0 || Solid is null
            ? Affine3D.Identity
            : Tilting.Undo(Solid.Lofts, Spec.Tilt.Axis, Spec.Tilt.Angle);
}
