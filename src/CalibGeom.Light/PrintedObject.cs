using CalibGeom.TestObjects;

namespace CalibGeom.Light;

/// <summary>
/// What light makes of a test object, feature by feature in closed form: walls and pockets as parallel strips, columns
/// as discs, tunnels by
/// print-through. Corners, layers of other shape above a face and pixels are left out; a raster of the layers has them.
/// Immutable and safe to
/// share between threads.
/// </summary>
public sealed class PrintedObject : PredictedPrint
{
    /// <summary>A printed test object.</summary>
    /// <param name="made">The object as designed.</param>
    /// <param name="blur">How light spreads sideways.</param>
    /// <param name="light">The light of all layers.</param>
    /// <param name="scale">Proportional change of all sizes, -0.1 to 0.1; -0.003 = 0.3 % too small. Default 0.</param>
    /// <param name="retreat">How far edges draw back, by rest before exposure for example, in mm, -1 to 1. Default
    /// 0.</param>
    /// <param name="edgeOffset">Edge offset entered in the slicer in mm, -1 to 1, positive = solids drawn larger.
    /// Default 0.</param>
    /// <exception cref="ArgumentException">A value is out of its range.</exception>
    public PrintedObject(
        TestObject made,
        EdgeBlur blur,
        LayerLight light,
        double scale = 0,
        double retreat = 0,
        double edgeOffset = 0
    )
        : base(made, blur, light, scale, retreat) =>
        EdgeOffset = Require.Within(edgeOffset, -1, 1, "edge offset", "mm", nameof(edgeOffset));

    /// <summary>Edge offset entered in the slicer, mm.</summary>
    public double EdgeOffset { get; }

    /// <summary>Growth per edge of a wide upright wall in mm; null when the light does not cure it.</summary>
    public double? Growth =>
        Light.WallRatio() > 1 ? Blur.EdgeDistance(1 / Light.WallRatio()) - Retreat + EdgeOffset : null;

    /// <inheritdoc/>
    public override IReadOnlyList<PrintedSize> Sizes()
    {
        var sizes = new Dictionary<string, double?>(StringComparer.Ordinal);
        foreach (BoxPlan box in Made.Boxes)
        {
            AddBox(sizes, $"box{box.Number}", "x", box.Outside.X, box.Inside.X);
            AddBox(sizes, $"box{box.Number}", "y", box.Outside.Y, box.Inside.Y);
        }
        foreach (ColumnPlan column in Made.Columns)
            sizes[$"column{column.Number}.diameter"] = ColumnDiameter(column.Diameter);
        foreach (Feature feature in Made.Features)
            if (feature.Id.Part == KnownFeatures.Span)
                sizes[feature.Id] = feature.Nominal * (1 + Scale) + 2 * Growth;
            else if (feature.Id is { Part: KnownFeatures.Slot, Size: KnownFeatures.Height })
                sizes[feature.Id] = Open(feature.Nominal, Light.PrintThrough());
            else if (feature.Id == KnownFeatures.SqueezeHeight)
                sizes[feature.Id] = Open(
                    feature.Nominal,
                    SqueezeTabLight.PrintThrough(Made.Spec.Squeeze!, Made.Spec.Squeeze!.Slots, Light)
                );
            else if (feature.Axis == "z" && feature.Unit == "mm")
                sizes[feature.Id] = feature.Nominal * (1 + Scale);
        return Made
            .Features.Where(f => sizes.ContainsKey(f.Id))
            .Select(f => new PrintedSize(f.Id, sizes[f.Id]))
            .ToArray();
    }

    /// <inheritdoc/>
    public override double AxisRatio(ColumnPlan column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return new DiscMask(Blur, column.Diameter + 2 * EdgeOffset).AxisShare * Light.WallRatio();
    }

    /// <inheritdoc/>
    public override IReadOnlyList<double> SqueezeGaps() =>
        Made.Features.Find(KnownFeatures.SqueezeOpen) is null
            ? []
            :
            [
                .. Enumerable
                    .Range(1, Made.Spec.Squeeze!.Slots)
                    .Select(slot =>
                        Open(Made.Spec.Squeeze.SlotHeight, SqueezeTabLight.PrintThrough(Made.Spec.Squeeze, slot, Light))
                        ?? 0
                    ),
            ];

    private double? Open(double height, double through) =>
        height > through ? height * (1 + Scale) - Math.Max(0, through) : null;

    private double? ColumnDiameter(double diameter)
    {
        double? printed =
            Light.WallRatio() > 0
                ? new DiscMask(Blur, diameter + 2 * EdgeOffset).PrintedDiameter(Light.WallRatio())
                : null;
        return printed is { } p && p > 2 * Retreat ? p * (1 + Scale) - 2 * Retreat : null;
    }

    private void AddBox(Dictionary<string, double?> sizes, string box, string axis, double outside, double inside)
    {
        double o = outside / 2 + EdgeOffset,
            i = inside / 2 - EdgeOffset;
        var walls = new StripMask(Blur, -o, -i, i, o);
        double ratio = Light.WallRatio();
        double? Size(int edge, int sign) =>
            walls.Boundary(edge, ratio) * 2 is { } width
                ? width + (edge == 3 ? outside : inside) * Scale + sign * 2 * Retreat
                : null;
        sizes[$"{box}.outside.{axis}"] = Size(3, -1);
        sizes[$"{box}.inside.{axis}"] = Size(2, 1);
    }
}
