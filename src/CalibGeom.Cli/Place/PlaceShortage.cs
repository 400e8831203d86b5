using System.Globalization;
using CalibGeom.Plates;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Place;

/// <summary>Why a coupon found no room, and what would.</summary>
internal static class PlaceShortage
{
    internal static Finding Explain(PlateLayout layout, PlaceCoupons coupons, PlaceRequest request)
    {
        (Coupon coupon, _) = coupons.All[0];
        if (request.IsMap && Fewer(layout, coupons) is var fewer and > 0)
            return new Finding(
                "no-room",
                Severity.Error,
                coupon.Name,
                $"Only {fewer} of {coupons.All.Count} coupons find room.",
                $"Take --count {fewer}, a smaller gap or a smaller coupon."
            )
            {
                Value = fewer,
                Limit = coupons.All.Count,
            };
        RoomShortage shortage = layout.Explain(coupon);
        return new Finding(
            "no-room",
            Severity.Error,
            coupon.Name,
            Message(layout, shortage),
            Remedy(layout, coupon, shortage)
        )
        {
            Value = shortage.LargestScale * Math.Max(shortage.Width, shortage.Depth),
            Limit = Math.Max(shortage.Width, shortage.Depth),
            Unit = "mm",
        };
    }

    private static int Fewer(PlateLayout layout, PlaceCoupons coupons)
    {
        for (int count = coupons.All.Count - 1; count > 0; count--)
            if (layout.PlaceMap(coupons.All.Take(count).ToArray()) is not null)
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

    private static string Remedy(PlateLayout layout, Coupon coupon, RoomShortage shortage)
    {
        var ways = new List<string>();
        if (shortage.WidestGap is { } gap)
            ways.Add(FormattableString.Invariant($"It fits with --gap {Math.Floor(gap * 100) / 100:0.##}."));
        if (SmallerPreset(layout, coupon) is { } preset)
            ways.Add($"The preset {preset} fits.");
        else if (shortage.TooHigh is null)
            ways.Add("No smaller preset fits.");
        if (!layout.Rules.Under)
            ways.Add("Where a part leaves height below it, --under may help.");
        return string.Join(" ", ways);
    }

    private static string? SmallerPreset(PlateLayout layout, Coupon coupon)
    {
        double area = Area(coupon);
        return Presets
            .All.Select(PlaceCoupons.Of)
            .OfType<Coupon>()
            .Where(c => Area(c) < area - 1e-6)
            .OrderByDescending(Area)
            .FirstOrDefault(layout.HasRoomFor)
            ?.Name;
    }

    private static double Area(Coupon coupon) => coupon.Bounds.Size.X * coupon.Bounds.Size.Y;
}
