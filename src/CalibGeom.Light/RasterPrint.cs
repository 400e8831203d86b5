using CalibGeom.Meshes;
using CalibGeom.Slicing;
using CalibGeom.TestObjects;

namespace CalibGeom.Light;

/// <summary>
/// What light makes of a test object, from the masks of its layers: sizes with the pixels, layers, corners and
/// neighbours that <see cref="PrintedObject"/> leaves out. A caliper touches what stands out farthest, so a flat face
/// counts by the farthest of its gauge lines; a column's diameter is the mean over eight directions. Immutable and safe
/// to share between threads.
/// </summary>
public sealed class RasterPrint : PredictedPrint
{
    private readonly Lazy<IReadOnlyList<PrintedSize>> sizes;

    /// <summary>A printed test object.</summary>
    /// <param name="made">The object as designed, without tilt: on a tilted object gauge faces are stairs that a line
    /// does not measure.</param>
    /// <param name="dose">The light of the object's mesh.</param>
    /// <param name="scale">Proportional change of all sizes, -0.1 to 0.1; -0.003 = 0.3 % too small. Default 0.</param>
    /// <param name="retreat">How far edges draw back sideways, by rest before exposure for example, in mm, -1 to 1.
    /// Default 0.</param>
    /// <exception cref="ArgumentException">A value is out of its range, or the object is tilted.</exception>
    public RasterPrint(TestObject made, LightDose dose, double scale = 0, double retreat = 0)
        : base(made, Require.Given(dose, nameof(dose)).Blur, dose.Light, scale, retreat)
    {
        if (made.Spec.Tilt.Angle != 0)
            throw new ArgumentException(
                "The sizes of a tilted object are not predicted from a raster. Predict those of the object "
                    + "without tilt.",
                nameof(made)
            );
        Dose = dose;
        sizes = new Lazy<IReadOnlyList<PrintedSize>>(Measure);
    }

    /// <summary>The light of the object's mesh.</summary>
    public LightDose Dose { get; }

    /// <summary>The light of an object with its masks, pixels bordering on x = 0 and y = 0.</summary>
    /// <param name="made">The object.</param>
    /// <param name="pitch">Pixel pitch, mm, 0.005 to 0.5.</param>
    /// <param name="blur">How light spreads sideways.</param>
    /// <param name="light">The light of all layers.</param>
    /// <param name="grey">Whether pixels are lit in proportion to their coverage. Default false.</param>
    /// <param name="edgeOffset">Edge offset entered in the slicer, which moves outlines before pixels are lit, mm, -1
    /// to 1, positive = solids drawn larger. Default 0.</param>
    /// <param name="progress">Told the finished part, 0 to 1, for each layer.</param>
    /// <param name="cancellation">Stops the work between layers.</param>
    /// <exception cref="ArgumentException">A value is out of its range.</exception>
    /// <exception cref="InvalidOperationException">The object has no solid.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static LightDose LightOf(
        TestObject made,
        PerAxis pitch,
        EdgeBlur blur,
        LayerLight light,
        bool grey = false,
        double edgeOffset = 0,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(blur);
        ArgumentNullException.ThrowIfNull(light);
        Require.Within(edgeOffset, -1, 1, "edge offset", "mm", nameof(edgeOffset));
        TriangleMesh mesh = made.ToMesh(cancellation);
        cancellation.ThrowIfCancellationRequested();
        int margin = 1 + (int)Math.Ceiling(Math.Max(0, edgeOffset) / Math.Min(pitch.X, pitch.Y));
        PixelGrid grid = PixelGrid.Covering(mesh.Bounds, pitch.X, pitch.Y, margin);
        return new LightDose(
            MaskStack.Of(mesh, grid, light.Layer, grey, edgeOffset, progress, cancellation),
            blur,
            light
        );
    }

    /// <inheritdoc/>
    public override IReadOnlyList<PrintedSize> Sizes() => sizes.Value;

    /// <inheritdoc/>
    public override double AxisRatio(ColumnPlan column)
    {
        ArgumentNullException.ThrowIfNull(column);
        GaugeLine line = Made.Gauges.First(g => g.Feature == KnownFeatures.ColumnDiameter(column.Number));
        return Dose.At((line.From.Point + line.To.Point) * 0.5) / Light.Curve.CriticalDose;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<double> SqueezeGaps() => [.. SqueezeSlots().Select(g => Height(g) ?? 0)];

    private PrintedSize[] Measure()
    {
        ILookup<FeatureId, GaugeLine> lines = Made.Gauges.ToLookup(g => g.Feature);
        return
        [
            .. Made
                .Features.Where(f => lines.Contains(f.Id))
                .Select(f => new PrintedSize(f.Id, SizeOf([.. lines[f.Id]]))),
        ];
    }

    private double? SizeOf(GaugeLine[] lines)
    {
        if (lines[0].Direction.Z != 0)
            return Height(lines[^1]);
        double? light = lines[0].Round ? lines.Average(Width) : Farthest(lines);
        double material = Vector3D.Dot(lines[0].To.Outward, lines[0].Direction);
        return light is { } size && size - 2 * material * Retreat is var printed and > 0
            ? printed + lines[0].Length() * Scale
            : null;
    }

    private double? Farthest(GaugeLine[] lines)
    {
        double?[] from = Array.ConvertAll(lines, l => Move(l.From)),
            to = Array.ConvertAll(lines, l => Move(l.To));
        return Array.Exists(from, m => m is null) || Array.Exists(to, m => m is null)
            ? null
            : lines[0].Length(from.Max()!.Value, to.Max()!.Value);
    }

    private double? Width(GaugeLine line) =>
        Move(line.From) is { } from && Move(line.To) is { } to ? line.Length(from, to) : null;

    private double? Height(GaugeLine line) =>
        Width(line) is { } height && height > 0 ? height + line.Length() * Scale : null;

    /// <summary>
    /// How far a face moves out, sideways on the film side of its layer, where walls get most light; what lies on the
    /// plate stays. No further than half the material: beyond its middle the other face is nearer.
    /// </summary>
    private double? Move(GaugeFace face)
    {
        Vector3D p = face.Point;
        if (face.Outward.Z < 0 && p.Z <= Dose.Masks.BaseZ)
            return 0;
        if (face.Outward.Z == 0)
            p = p with { Z = Dose.Masks.FilmZ((int)Math.Floor((p.Z - Dose.Masks.BaseZ) / Light.Layer)) };
        return Dose.Edge(p, face.Outward, face.Behind / 2, face.Ahead);
    }
}
