using System.Globalization;

namespace CalibGeom.Plates;

/// <summary>Why coupons found no room, and what would.</summary>
public static class PlacementAdvice
{
    /// <summary>Why one coupon found no room.</summary>
    /// <param name="layout">The plate, as it was when the coupon found none.</param>
    /// <param name="coupon">The coupon.</param>
    /// <param name="others">Other coupons that might be taken; of those smaller than this one the largest with room is
    /// named. All are made, then room is searched for one after another, the largest first, until one has it.</param>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public static Finding Explain(PlateLayout layout, Coupon coupon, IEnumerable<Coupon> others)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(coupon);
        ArgumentNullException.ThrowIfNull(others);
        RoomShortage shortage = layout.Explain(coupon);
        return new Finding(
            "no-room",
            Severity.Error,
            coupon.Name,
            Message(layout, shortage),
            Remedy(layout, coupon, shortage, others)
        )
        {
            Value = shortage.TooHigh is null ? shortage.LargestScale * Longest(shortage) : coupon.Bounds.Size.Z,
            Limit = shortage.TooHigh is { } high ? coupon.Bounds.Size.Z - high : Longest(shortage),
            Unit = "mm",
        };
    }

    private static double Longest(RoomShortage shortage) => Math.Max(shortage.Width, shortage.Depth);

    /// <summary>Why the coupons of a map found no room: how many would, or what is missing for the first.</summary>
    /// <param name="layout">The plate, as it was when they found none.</param>
    /// <param name="labelled">The coupons, at least one.</param>
    /// <param name="others">Other coupons that might be taken.</param>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public static Finding ExplainMap(
        PlateLayout layout,
        IReadOnlyList<LabelledCoupon> labelled,
        IEnumerable<Coupon> others
    )
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(labelled);
        ArgumentNullException.ThrowIfNull(others);
        int fewer = Fewer(layout, labelled);
        if (fewer == 0)
            return Explain(layout, labelled[0].Coupon, others);
        return new Finding(
            "no-room",
            Severity.Error,
            labelled[0].Coupon.Name,
            $"Only {fewer} of {labelled.Count} coupons find room, spread over the plate, in rows or in columns.",
            $"Take {fewer}, a smaller gap or a smaller coupon."
        )
        {
            Value = fewer,
            Limit = labelled.Count,
        };
    }

    private static int Fewer(PlateLayout layout, IReadOnlyList<LabelledCoupon> labelled)
    {
        for (int count = labelled.Count - 1; count > 0; count--)
            if (layout.HasRoomForMap(labelled.Take(count).ToArray()))
                return count;
        return 0;
    }

    private static string Message(PlateLayout layout, RoomShortage shortage)
    {
        if (shortage.TooHigh is { } high)
            return FormattableString.Invariant($"The coupon is {high:0.##} mm higher than the plate allows.");
        string size = string.Create(
            CultureInfo.InvariantCulture,
            $"A coupon of {shortage.Width:0.0} x {shortage.Depth:0.0} mm with a gap of {layout.Rules.Gap:0.##} "
                + $"mm finds no room"
        );
        return shortage.LargestScale is { } scale
            ? size
                + string.Create(
                    CultureInfo.InvariantCulture,
                    $": the largest of its shape that does is {shortage.Width * scale:0.0} x "
                        + $"{shortage.Depth * scale:0.0} mm, so {shortage.MissingWidth:0.0} x "
                        + $"{shortage.MissingDepth:0.0} mm is missing."
                )
            : size + ", nor does any smaller one.";
    }

    private static string Remedy(PlateLayout layout, Coupon coupon, RoomShortage shortage, IEnumerable<Coupon> others)
    {
        var ways = new List<string>();
        if (shortage.AdvisedGap is { } gap)
            ways.Add(FormattableString.Invariant($"It fits with a gap of {gap:0.##} mm."));
        if (Smaller(layout, coupon, others) is { } smaller)
            ways.Add($"The preset {smaller} fits.");
        else
            ways.Add(shortage.TooHigh is null ? "No smaller preset fits." : "Take a lower coupon.");
        if (shortage.TooHigh is not null)
            ways.Add("Check the plate's height.");
        else if (!layout.Rules.Under)
            ways.Add("Where a part leaves height below it, letting it stand under parts may help.");
        return string.Join(" ", ways);
    }

    private static string? Smaller(PlateLayout layout, Coupon coupon, IEnumerable<Coupon> others) =>
        others
            .Where(c => Area(c) < Area(coupon) - 1e-6)
            .OrderByDescending(Area)
            .FirstOrDefault(layout.HasRoomFor)
            ?.Name;

    private static double Area(Coupon coupon) => coupon.Bounds.Size.X * coupon.Bounds.Size.Y;
}
