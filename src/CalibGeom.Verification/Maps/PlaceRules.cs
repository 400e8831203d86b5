namespace CalibGeom.Verification.Maps;

/// <summary>From what places a map can be told.</summary>
internal static class PlaceRules
{
    // Below this share of the longer spread, light across the line would be guessed and not read.
    private const double LeastSpread = 0.05;

    /// <summary>The places of coupons that were read, each once.</summary>
    /// <exception cref="InputException">One is off the plate, or they do not span it.</exception>
    internal static IReadOnlyList<(double X, double Y)> Of(IReadOnlyList<MapPoint> points, MapOptions options)
    {
        if (points.FirstOrDefault(p => IsOff(p, options)) is { } off)
            throw new InputException(InputIds.Plate, OffPlate(off, options));
        MapPoint[] read = points.Where(p => p.Values.Count > 0).ToArray();
        (double X, double Y)[] places = read.Select(p => (p.X, p.Y)).Distinct().ToArray();
        if (places.Length < 3)
            throw new InputException(
                InputIds.Question,
                $"A map needs coupons at three places or more; these readings are of {places.Length}. Print four or five "
                    + "over the plate."
            );
        (double along, double across) = Spreads(places);
        if (across < LeastSpread * along)
            throw new InputException(InputIds.Question, OneLine(read, along, across));
        return places;
    }

    private static bool IsOff(MapPoint p, MapOptions o) =>
        Math.Abs(p.X) > o.Width / 2 + 1e-9 || Math.Abs(p.Y) > o.Depth / 2 + 1e-9;

    private static string OffPlate(MapPoint p, MapOptions o) =>
        FormattableString.Invariant(
            $"Coupon {p.Name} stands at X {p.X:0.##}, Y {p.Y:0.##} mm, off the plate of {o.Width:0.##} x {o.Depth:0.##} mm: X from {-o.Width / 2:0.##} to {o.Width / 2:0.##}, Y from {-o.Depth / 2:0.##} to {o.Depth / 2:0.##} mm. Say how large the plate is; places must count from its middle, so take half its width and depth from those that count from a corner."
        );

    private static string OneLine(MapPoint[] read, double along, double across) =>
        FormattableString.Invariant(
            $"Coupons {string.Join(", ", read.Select(p => p.Name))} stand on one line, or nearly: they spread by {along:0.#} mm along it and {across:0.#} mm across, less than {100 * LeastSpread:0} %. Light across the line cannot be told from them. Print coupons beside the line too, such as at the corners of the plate."
        );

    /// <summary>Standard deviations of places along their longest direction and across it, mm.</summary>
    private static (double Along, double Across) Spreads((double X, double Y)[] places)
    {
        double mx = places.Average(p => p.X),
            my = places.Average(p => p.Y),
            xx = places.Average(p => (p.X - mx) * (p.X - mx)),
            yy = places.Average(p => (p.Y - my) * (p.Y - my)),
            xy = places.Average(p => (p.X - mx) * (p.Y - my)),
            middle = (xx + yy) / 2,
            apart = Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy);
        return (Math.Sqrt(middle + apart), Math.Sqrt(Math.Max(0, middle - apart)));
    }
}
