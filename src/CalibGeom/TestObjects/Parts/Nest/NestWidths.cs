namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>
/// Outside and inside widths of the boxes: as made, after whole pixels. A pocket is as many pixels wider than its box
/// as come closest to the clearance.
/// </summary>
internal sealed class NestWidths
{
    private NestWidths(PerAxis[] outside, PerAxis[] inside)
    {
        Outside = outside;
        Inside = inside;
    }

    /// <summary>Made, mm; index 0 is box 1.</summary>
    internal IReadOnlyList<PerAxis> Outside { get; }

    /// <summary>Made, mm.</summary>
    internal IReadOnlyList<PerAxis> Inside { get; }

    /// <summary>The clearance per side that joint <paramref name="joint"/> (from 1) is made with, mm.</summary>
    internal PerAxis Clearance(int joint) =>
        new((Inside[joint].X - Outside[joint - 1].X) / 2, (Inside[joint].Y - Outside[joint - 1].Y) / 2);

    internal static NestWidths Of(NestSpec nest, PixelGrid pixels)
    {
        PerAxis[] outside = [.. nest.Sizes.Select(s => pixels.Width(s))];
        var inside = new PerAxis[outside.Length];
        for (int i = 0; i < inside.Length; i++)
            inside[i] =
                i == 0
                    ? Plus(outside[0], pixels.Difference(-2 * nest.Wall))
                    : Plus(outside[i - 1], pixels.Difference(Twice(nest.Clearances[i - 1])));
        return new NestWidths(outside, inside);
    }

    private static PerAxis Plus(PerAxis a, PerAxis b) => new(a.X + b.X, a.Y + b.Y);

    private static PerAxis Twice(PerAxis a) => new(2 * a.X, 2 * a.Y);
}
