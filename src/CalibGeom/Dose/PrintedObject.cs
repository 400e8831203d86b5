using CalibGeom.TestObjects;

namespace CalibGeom.Dose;

/// <summary>
/// What light makes of a test object, feature by feature in closed form: walls and pockets as parallel strips, columns as discs, tunnels by
/// print-through. Corners, layers of other shape above a face and pixels are left out; a raster of the layers has them. Immutable and safe to
/// share between threads.
/// </summary>
public sealed class PrintedObject
{
    private readonly TestObject made;

    /// <summary>A printed test object.</summary>
    /// <param name="made">The object as designed.</param>
    /// <param name="blur">How light spreads sideways.</param>
    /// <param name="light">The light of normal layers.</param>
    /// <param name="scale">Proportional change of all sizes, -0.1 to 0.1; -0.003 = 0.3 % too small. Default 0.</param>
    /// <param name="retreat">How far edges draw back, by rest before exposure for example, in mm, -1 to 1. Default 0.</param>
    /// <param name="edgeOffset">Edge offset entered in the slicer in mm, -1 to 1, positive = solids drawn larger. Default 0.</param>
    /// <exception cref="ArgumentException">A value is out of its range.</exception>
    public PrintedObject(TestObject made, EdgeBlur blur, LayerLight light, double scale = 0, double retreat = 0, double edgeOffset = 0)
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(blur);
        ArgumentNullException.ThrowIfNull(light);
        Scale = Within(scale, 0.1, "scale", "", nameof(scale));
        Retreat = Within(retreat, 1, "retreat of edges", " mm", nameof(retreat));
        EdgeOffset = Within(edgeOffset, 1, "edge offset", " mm", nameof(edgeOffset));
        this.made = made;
        Blur = blur;
        Light = light;
    }

    /// <summary>How light spreads sideways.</summary>
    public EdgeBlur Blur { get; }

    /// <summary>The light of normal layers.</summary>
    public LayerLight Light { get; }

    /// <summary>Proportional change of all sizes.</summary>
    public double Scale { get; }

    /// <summary>How far edges draw back, mm.</summary>
    public double Retreat { get; }

    /// <summary>Edge offset entered in the slicer, mm.</summary>
    public double EdgeOffset { get; }

    /// <summary>Growth per edge of a wide upright wall in mm; null when the light does not cure it.</summary>
    public double? Growth => Light.WallRatio() > 1 ? Blur.EdgeDistance(1 / Light.WallRatio()) - Retreat + EdgeOffset : null;

    /// <summary>Every size in the object's feature table that light decides, in its order.</summary>
    public IReadOnlyList<PrintedSize> Sizes()
    {
        var sizes = new Dictionary<string, double?>(StringComparer.Ordinal);
        foreach (BoxPlan box in made.Boxes)
        {
            AddBox(sizes, $"box{box.Number}", "x", box.Outside.X, box.Inside.X);
            AddBox(sizes, $"box{box.Number}", "y", box.Outside.Y, box.Inside.Y);
        }
        foreach (ColumnPlan column in made.Columns) sizes[$"column{column.Number}.diameter"] = ColumnDiameter(column.Diameter);
        foreach (Feature feature in made.Features)
            if (feature.Id.StartsWith("span.", StringComparison.Ordinal)) sizes[feature.Id] = feature.Nominal * (1 + Scale) + 2 * Growth;
            else if (feature.Axis == "z" && feature.Unit == "mm") sizes[feature.Id] = feature.Nominal * (1 + Scale);
        return made.Features.Where(f => sizes.ContainsKey(f.Id)).Select(f => new PrintedSize(f.Id, sizes[f.Id])).ToArray();
    }

    /// <summary>The clearance per side in mm of each joint along X and Y; null where a box does not print.</summary>
    public IReadOnlyList<(double? X, double? Y)> Clearances()
    {
        Dictionary<string, double?> sizes = Sizes().ToDictionary(s => s.Feature, s => s.Value, StringComparer.Ordinal);
        double? Gap(int joint, string axis) => (sizes[$"box{joint + 1}.inside.{axis}"] - sizes[$"box{joint}.outside.{axis}"]) / 2;
        return made.Joints.Select(j => (Gap(j.Number, "x"), Gap(j.Number, "y"))).ToArray();
    }

    /// <summary>How many tunnels of the slot comb stay open.</summary>
    public int OpenSlots() => made.Spec.Slots?.Heights.Count(h => h > Light.PrintThrough()) ?? 0;

    private double? ColumnDiameter(double diameter)
    {
        double? printed = Light.WallRatio() > 0 ? new DiscMask(Blur, diameter + 2 * EdgeOffset).PrintedDiameter(Light.WallRatio()) : null;
        return printed is { } p && p > 2 * Retreat ? p * (1 + Scale) - 2 * Retreat : null;
    }

    private void AddBox(Dictionary<string, double?> sizes, string box, string axis, double outside, double inside)
    {
        double o = outside / 2 + EdgeOffset, i = inside / 2 - EdgeOffset;
        var walls = new StripMask(Blur, -o, -i, i, o);
        double ratio = Light.WallRatio();
        double? Size(int edge, int sign) => walls.Boundary(edge, ratio) * 2 is { } width ? width + (edge == 3 ? outside : inside) * Scale + sign * 2 * Retreat : null;
        sizes[$"{box}.outside.{axis}"] = Size(3, -1);
        sizes[$"{box}.inside.{axis}"] = Size(2, 1);
    }

    private static double Within(double value, double most, string what, string unit, string parameter) => Math.Abs(value) <= most
        ? value
        : throw new ArgumentException(FormattableString.Invariant($"The {what} must be {-most} to {most}{unit}, not {value}."), parameter);
}
