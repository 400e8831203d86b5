namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>Widths and depths of one box, mm.</summary>
/// <param name="Outside">Outside widths.</param>
/// <param name="Inside">Inside widths of the pocket.</param>
/// <param name="Key">Legs of the cut corner outside.</param>
/// <param name="InsideKey">Legs of the cut corner inside.</param>
/// <param name="PocketDepth">From the mouth to the floor.</param>
/// <param name="GaugeBand">Height of the gauge band.</param>
internal sealed record BoxFrame(
    PerAxis Outside,
    PerAxis Inside,
    double Key,
    double InsideKey,
    double PocketDepth,
    double GaugeBand
)
{
    /// <summary>The outside section over the straight part.</summary>
    internal KeyedSquare Full =>
        new(Outside.X / 2, Outside.Y / 2, Math.Min(Proportions.OutsideRadius, SmallestOutside / 6), Key);

    /// <summary>The section of the pocket.</summary>
    internal KeyedSquare Pocket =>
        new(Inside.X / 2, Inside.Y / 2, Math.Min(Proportions.InsideRadius, SmallestInside / 10), InsideKey);

    /// <summary>The section of the pocket at its mouth.</summary>
    internal KeyedSquare Mouth => Pocket.Grow(Math.Min(Proportions.LeadInWidth, Wall / 4));

    /// <summary>The thinnest wall beside the pocket.</summary>
    internal double Wall => Math.Min(Outside.X - Inside.X, Outside.Y - Inside.Y) / 2;

    /// <summary>The smallest pocket that inside jaws go into, mm. Common practice, no source.</summary>
    internal const double LeastPocket = 3.4;

    /// <summary>The smaller inside width.</summary>
    internal double SmallestInside => Math.Min(Inside.X, Inside.Y);

    /// <summary>The gauge band's lower end above the pocket's floor.</summary>
    internal double BandOffset => Math.Max(0, PocketDepth - Proportions.LeadInHeight - GaugeBand);

    private double SmallestOutside => Math.Min(Outside.X, Outside.Y);

    /// <summary>
    /// The frames of a nest's boxes. The gap at the cut corner is twice the clearance, so that flat faces meet first.
    /// </summary>
    internal static BoxFrame[] Of(NestSpec nest, NestWidths widths)
    {
        double key = Math.Min(Proportions.Key, nest.Sizes[0] / 5);
        return
        [
            .. Enumerable
                .Range(0, nest.Sizes.Count)
                .Select(i => new BoxFrame(
                    widths.Outside[i],
                    widths.Inside[i],
                    key,
                    i == 0 ? key / 2 : InsideKeyOf(widths.Clearance(i), key),
                    nest.PocketDepth,
                    nest.GaugeBand
                )),
        ];
    }

    private static double InsideKeyOf(PerAxis clearance, double key)
    {
        double gap = 2 * Math.Max(Math.Abs(clearance.X), Math.Abs(clearance.Y));
        return Math.Max(key / 4, key + clearance.X + clearance.Y - Math.Sqrt(2) * gap);
    }
}
