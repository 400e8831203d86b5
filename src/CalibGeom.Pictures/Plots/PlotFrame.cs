using CalibGeom.Pictures.Drawings;

namespace CalibGeom.Pictures.Plots;

/// <summary>What surrounds the content of a plot.</summary>
internal static class PlotFrame
{
    private static readonly TextStyle Small = new(11) { Ink = Ink.Muted };

    internal static void Grid(PlotArea plot, Drawing drawing, double x, double y, double width, double height)
    {
        var pen = new Pen(Ink.Faint);
        foreach ((double value, _) in plot.Horizontal.Ticks())
            drawing.Line(
                plot.Map(value, plot.Vertical.Min).X,
                y,
                plot.Map(value, plot.Vertical.Min).X,
                y + height,
                pen
            );
        foreach ((double value, _) in plot.Vertical.Ticks())
            drawing.Line(
                x,
                plot.Map(plot.Horizontal.Min, value).Y,
                x + width,
                plot.Map(plot.Horizontal.Min, value).Y,
                pen
            );
    }

    internal static void Labels(PlotArea plot, Drawing drawing, double x, double y, double width, double height)
    {
        drawing.Rectangle(x, y, width, height, null, new Pen(Ink.Muted));
        foreach ((double value, string text) in plot.Horizontal.Ticks())
            drawing.Text(
                plot.Map(value, plot.Vertical.Min).X,
                y + height + 16,
                text,
                Small with
                {
                    Anchor = TextAnchor.Middle,
                }
            );
        foreach ((double value, string text) in plot.Vertical.Ticks())
            drawing.Text(
                x - 6,
                plot.Map(plot.Horizontal.Min, value).Y + 4,
                text,
                Small with
                {
                    Anchor = TextAnchor.End,
                }
            );
        drawing.Text(x + width / 2, y + height + 38, plot.Horizontal.Label, new TextStyle(12, TextAnchor.Middle));
        drawing.Text(x - 50, y + height / 2, plot.Vertical.Label, new TextStyle(12, TextAnchor.Middle, Turn: 90));
        drawing.Text(x, y - 24, plot.Title, new TextStyle(14, Bold: true));
    }

    /// <summary>Samples and names in one row that ends at the right.</summary>
    internal static void Legend(Drawing drawing, List<LegendEntry> entries, double right, double baseline)
    {
        double start = right - entries.Sum(e => 26 + TextFont.Width(e.Name, Small) + 14) + 14;
        foreach (LegendEntry entry in entries)
        {
            double middle = baseline - 4;
            if (entry.Pen is { } pen)
                drawing.Line(start, middle, start + 20, middle, pen);
            else if (entry.Radius > 0)
                drawing.Disc(start + 10, middle, entry.Radius, entry.Fill);
            else
                drawing.Rectangle(start, middle - 5, 20, 10, entry.Fill);
            drawing.Text(start + 26, baseline, entry.Name, Small);
            start += 26 + TextFont.Width(entry.Name, Small) + 14;
        }
    }
}
