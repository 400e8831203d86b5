namespace CalibGeom.TestObjects.Parts;

/// <summary>Outside and inside widths of the boxes: as wanted, and as made after whole pixels.</summary>
internal sealed class NestWidths
{
    private NestWidths(PerAxis[] outside, PerAxis[] inside, PerAxis[] wantedInside)
    {
        Outside = outside;
        Inside = inside;
        WantedInside = wantedInside;
    }

    /// <summary>Made, mm; index 0 is box 1.</summary>
    internal IReadOnlyList<PerAxis> Outside { get; }

    /// <summary>Made, mm.</summary>
    internal IReadOnlyList<PerAxis> Inside { get; }

    /// <summary>From the spec, mm.</summary>
    internal IReadOnlyList<PerAxis> WantedInside { get; }

    /// <summary>The clearance per side that joint <paramref name="joint"/> (from 1) is made with, mm.</summary>
    internal PerAxis Clearance(int joint) => new(
        (Inside[joint].X - Outside[joint - 1].X) / 2, (Inside[joint].Y - Outside[joint - 1].Y) / 2);

    internal static NestWidths Of(NestSpec nest, PixelGrid pixels)
    {
        PerAxis[] wanted = nest.Sizes.Select(s => (PerAxis)s).ToArray();
        var inside = new PerAxis[wanted.Length];
        inside[0] = wanted[0].X - 2 * nest.Wall;
        for (int j = 1; j < wanted.Length; j++)
            inside[j] = new(wanted[j - 1].X + 2 * nest.Clearances[j - 1].X, wanted[j - 1].Y + 2 * nest.Clearances[j - 1].Y);
        return new NestWidths(Array.ConvertAll(wanted, pixels.Width), Array.ConvertAll(inside, pixels.Width), inside);
    }
}
