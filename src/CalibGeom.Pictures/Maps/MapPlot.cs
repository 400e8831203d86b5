using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Verification.Maps;

namespace CalibGeom.Pictures.Maps;

/// <summary>
/// The plate from above with the light at each coupon and, where a difference is told, its lines and where it may be
/// weakest.
/// </summary>
public static class MapPlot
{
    private const double LongerSide = 720;
    private const int Cells = 41;

    /// <summary>Draws it.</summary>
    /// <param name="map">What the coupons say.</param>
    public static Drawing Draw(MapResult map)
    {
        ArgumentNullException.ThrowIfNull(map);
        MapOptions o = map.Options;
        double scale = LongerSide / Math.Max(o.Width, o.Depth),
            width = Math.Max(460, o.Width * scale + PlotArea.LabelWidth),
            height = Math.Max(140, o.Depth * scale + PlotArea.LabelHeight);
        string title = map.Differs
            ? "Light over the plate, per cent of the mean"
            : "Light over the plate: no difference seen";
        var drawing = new Drawing(width, height, title);
        var plot = new PlotArea(
            drawing,
            0,
            0,
            width,
            height,
            new Axis("X, mm", -o.Width / 2, o.Width / 2),
            new Axis("Y, mm", -o.Depth / 2, o.Depth / 2)
        )
        {
            Title = title,
        };
        if (map.Within is { } part && map.WithinShare < 0.999)
            plot.Area(
                [
                    [(part.MinX, part.MinY), (part.MaxX, part.MinY), (part.MaxX, part.MaxY), (part.MinX, part.MaxY)],
                ],
                Ink.Teal.WithOpacity(0.12),
                null,
                "one exposure serves"
            );
        if (map.Differs)
            Lines(plot, map);
        Weakest(plot, map.WeakestPlaces);
        plot.Points(map.Places.Select(p => new PlotPoint(p.Point.X, p.Point.Y)), Ink.Blue, "coupon", 5);
        foreach (PlacedLight place in map.Places)
        {
            bool high = place.Point.Y > 0.35 * o.Depth;
            double step = o.Depth * 0.045;
            plot.Note(
                place.Point.X,
                place.Point.Y + (high ? -1.4 : 0.6) * step,
                place.Own is { } own
                    ? FormattableString.Invariant($"{place.Point.Name} {100 * (Math.Exp(own.Value) - 1):+0.0;-0.0} %")
                    : place.Point.Name,
                new TextStyle(12, TextAnchor.Middle, true)
            );
        }
        plot.Finish();
        return drawing;
    }

    // A mark at every place would say nothing.
    private static void Weakest(PlotArea plot, IReadOnlyList<WeakPlace> places)
    {
        if (places.Count is > 0 and < 5)
            plot.Points(
                places.Select(p => new PlotPoint(p.X, p.Y)),
                Ink.Plum,
                places.Count == 1 ? "weakest" : "one is the weakest",
                9
            );
    }

    private static void Lines(PlotArea plot, MapResult map)
    {
        double[] xs = Steps(map.Options.Width),
            ys = Steps(map.Options.Depth);
        double[,] field = new double[ys.Length, xs.Length];
        for (int r = 0; r < ys.Length; r++)
        for (int c = 0; c < xs.Length; c++)
            field[r, c] = 100 * (Math.Exp(map.LightAt(xs[c], ys[r]).Value) - 1);
        double low = field.Cast<double>().Min(),
            high = field.Cast<double>().Max();
        double step = (high - low) switch
        {
            < 6 => 1,
            < 12 => 2,
            < 30 => 5,
            _ => 10,
        };
        for (double level = Math.Ceiling(low / step) * step; level <= high; level += step)
            plot.Contour(
                xs,
                ys,
                field,
                level,
                new Pen(Ink.Ochre, 1.4),
                FormattableString.Invariant($"{level:+0;-0;0} %")
            );
    }

    private static double[] Steps(double size) =>
        Enumerable.Range(0, Cells).Select(i => size * (i / (Cells - 1.0) - 0.5)).ToArray();
}
