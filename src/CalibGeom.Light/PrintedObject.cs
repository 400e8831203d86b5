using CalibGeom.TestObjects;

namespace CalibGeom.Light;

/// <summary>
/// What light makes of a test object, feature by feature in closed form: walls and pockets as parallel strips, columns
/// as discs, tunnels by print-through. Corners, layers of other shape above a face and pixels are left out; a raster of
/// the layers has them. Immutable and safe to share between threads.
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
    public override IReadOnlyList<PrintedSize> Sizes() =>
        [.. Made.Gauges.GroupBy(g => g.Feature).Select(lines => new PrintedSize(lines.Key, SizeOf(lines.Last())))];

    /// <inheritdoc/>
    public override double AxisRatio(ColumnPlan column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return new DiscMask(Blur, column.Diameter + 2 * EdgeOffset).AxisShare * Light.WallRatio();
    }

    /// <inheritdoc/>
    public override IReadOnlyList<double> SqueezeGaps() => [.. SqueezeSlots().Select(g => Opening(g) ?? 0)];

    private double? SizeOf(GaugeLine line) =>
        line.Direction.Z == 1
            ? line.IsGap
                ? Opening(line)
                : Height(line)
            : line.Round
                ? ColumnDiameter(line.Length())
                : Width(line);

    private double? Height(GaugeLine line)
    {
        double height = line.Length() * (1 + Scale) + Below(line);
        return height > 0 ? height : null;
    }

    /// <summary>
    /// What light cures below material that hangs free, as the beam of a bridge does, mm; negative where it does not
    /// even cure the lowest layer through.
    /// </summary>
    private double Below(GaugeLine line) =>
        line.IsSolid && line.From.Point.Z > 0
            ? StackedRoofs.PrintThrough(line.From.Point.Z, [(line.To.Point.Z, double.PositiveInfinity)], Light)
            : 0;

    /// <summary>
    /// What print-through leaves of a level gap; gaps above it let no light through but have no resin to cure.
    /// </summary>
    private double? Opening(GaugeLine line)
    {
        double height = line.Length();
        (double From, double To)[] above =
        [
            .. Made
                .Gauges.Where(g => g.IsGap && g.Direction.Z == 1 && IsOver(g, line))
                .Select(g => (g.From.Point.Z, g.To.Point.Z)),
        ];
        double through =
            above.Length == 0 ? Light.PrintThrough() : StackedRoofs.PrintThrough(line.To.Point.Z, above, Light);
        return height > through ? height * (1 + Scale) - Math.Max(0, through) : null;
    }

    private static bool IsOver(GaugeLine upper, GaugeLine lower) =>
        upper.From.Point.Z >= lower.To.Point.Z
        && upper.From.Point.X == lower.From.Point.X
        && upper.From.Point.Y == lower.From.Point.Y;

    private double? ColumnDiameter(double diameter)
    {
        double? printed =
            Light.WallRatio() > 0
                ? new DiscMask(Blur, diameter + 2 * EdgeOffset).PrintedDiameter(Light.WallRatio())
                : null;
        return printed is { } p && p > 2 * Retreat ? p * (1 + Scale) - 2 * Retreat : null;
    }

    /// <summary>Two parallel walls, or one strip where the material is solid from face to face.</summary>
    private double? Width(GaugeLine line)
    {
        double half = line.Length() / 2,
            wall = line.From.Behind,
            inner = (line.IsSolid ? half - wall : half) - EdgeOffset,
            outer = (line.IsSolid ? half : half + wall) + EdgeOffset,
            ratio = Light.WallRatio();
        double? edge =
            inner <= 0
                ? new StripMask(Blur, -outer, outer).Boundary(1, ratio)
                : new StripMask(Blur, -outer, -inner, inner, outer).Boundary(line.IsSolid ? 3 : 2, ratio);
        return edge * 2 is { } width ? width + line.Length() * Scale + (line.IsSolid ? -2 : 2) * Retreat : null;
    }
}
