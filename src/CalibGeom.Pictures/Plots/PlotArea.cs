using CalibGeom.Pictures.Drawings;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Plots;

/// <summary>
/// A plot inside a drawing: bands, lines, contours and points in data coordinates, cut off at the frame, then
/// <see cref="Finish"/> for frame, ticks, labels and legend. Not safe to share between threads.
/// </summary>
/// <remarks>
/// Own code beside a kept library: ScottPlot 5.1.59 was tried with one plot of three points. Its SVG is of other bytes
/// each time it is drawn, is set in a font of the machine (a serif one here) with a place for every letter, and has
/// neither title nor role for a screen reader. Pictures of this project are the same bytes on every machine.
/// </remarks>
public sealed class PlotArea
{
    /// <summary>
    /// Room for labels on the left and right together, pixels: what is left of the width is the plot itself.
    /// </summary>
    public const double LabelWidth = Left + Right;

    /// <summary>
    /// Room for labels above and below together, pixels: what is left of the height is the plot itself.
    /// </summary>
    public const double LabelHeight = Top + Bottom;

    private const double Left = 68,
        Right = 18,
        Top = 40,
        Bottom = 52;

    private readonly Drawing drawing;
    private readonly double x,
        y,
        width,
        height;
    private readonly List<Action<Drawing>> content = [];
    private readonly List<LegendEntry> legend = [];

    /// <summary>A plot that takes a rectangle of a drawing, labels included.</summary>
    /// <param name="drawing">What it is drawn into.</param>
    /// <param name="x">Left of the rectangle, pixels.</param>
    /// <param name="y">Top of the rectangle, pixels.</param>
    /// <param name="width">Pixels, at least 160.</param>
    /// <param name="height">Pixels, at least 140.</param>
    /// <param name="horizontal">The axis to the right.</param>
    /// <param name="vertical">The axis upward.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rectangle is too small.</exception>
    public PlotArea(Drawing drawing, double x, double y, double width, double height, Axis horizontal, Axis vertical)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(horizontal);
        ArgumentNullException.ThrowIfNull(vertical);
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 160);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 140);
        this.drawing = drawing;
        (this.x, this.y, this.width, this.height) = (x + Left, y + Top, width - Left - Right, height - Top - Bottom);
        (Horizontal, Vertical) = (horizontal, vertical);
    }

    /// <summary>The axis to the right.</summary>
    public Axis Horizontal { get; }

    /// <summary>The axis upward.</summary>
    public Axis Vertical { get; }

    /// <summary>The heading; empty by default.</summary>
    public string Title { get; init; } = "";

    /// <summary>Where a point of the plot lies in the drawing, pixels.</summary>
    /// <param name="dataX">On the horizontal axis.</param>
    /// <param name="dataY">On the vertical axis.</param>
    public Vector2D Map(double dataX, double dataY) =>
        (x + Horizontal.Fraction(dataX) * width, y + (1 - Vertical.Fraction(dataY)) * height);

    /// <summary>A line through points.</summary>
    /// <param name="points">Data coordinates.</param>
    /// <param name="pen">How it is drawn.</param>
    /// <param name="name">Its name in the legend, or null for none.</param>
    public void Line(IEnumerable<Vector2D> points, Pen pen, string? name = null)
    {
        ArgumentNullException.ThrowIfNull(pen);
        var mapped = points.Select(p => Map(p.X, p.Y)).ToArray();
        content.Add(d => d.Polyline(mapped, pen));
        Name(name, null, pen, 0);
    }

    /// <summary>A shaded band between a lower and an upper line.</summary>
    /// <param name="points">Data coordinates, in order of X.</param>
    /// <param name="fill">Its colour; a low opacity lets lines be seen through it.</param>
    /// <param name="name">Its name in the legend, or null for none.</param>
    public void Band(IEnumerable<BandPoint> points, Ink fill, string? name = null)
    {
        var all = points.ToArray();
        var border = all.Select(p => Map(p.X, p.Low)).Concat(all.Reverse().Select(p => Map(p.X, p.High))).ToArray();
        content.Add(d => d.Polygon(border, fill));
        Name(name, fill, null, 0);
    }

    /// <summary>An area within rings, by the even-odd rule, so that a ring inside another is a hole.</summary>
    /// <param name="rings">Data coordinates.</param>
    /// <param name="fill">Its colour, or null.</param>
    /// <param name="pen">Its border, or null.</param>
    /// <param name="name">Its name in the legend, or null for none.</param>
    public void Area(IEnumerable<IEnumerable<Vector2D>> rings, Ink? fill, Pen? pen = null, string? name = null)
    {
        var mapped = rings.Select(r => r.Select(p => Map(p.X, p.Y)).ToArray()).ToArray();
        content.Add(d => d.Rings(mapped, fill, pen));
        Name(name, fill, fill is null ? pen : null, 0);
    }

    /// <summary>Points with bars of plus and minus their uncertainty.</summary>
    /// <param name="points">Data coordinates; an error of 0 draws no bar.</param>
    /// <param name="ink">Their colour.</param>
    /// <param name="name">Their name in the legend, or null for none.</param>
    /// <param name="radius">Pixels; 3.5 by default.</param>
    public void Points(IEnumerable<PlotPoint> points, Ink ink, string? name = null, double radius = 3.5)
    {
        var pen = new Pen(ink, 1.3);
        foreach ((double px, double py, double error) in points.ToArray())
        {
            (double cx, double cy) = Map(px, py);
            if (error > 0)
            {
                double high = Map(px, py + error).Y,
                    low = Map(px, py - error).Y;
                content.Add(d => d.Line(cx, low, cx, high, pen));
                content.Add(d => d.Line(cx - 3, low, cx + 3, low, pen));
                content.Add(d => d.Line(cx - 3, high, cx + 3, high, pen));
            }
            content.Add(d => d.Disc(cx, cy, radius, ink));
        }
        Name(name, ink, null, radius);
    }

    /// <summary>The line on which a field has a value, with the value written on it.</summary>
    /// <param name="xs">Rising data X of the field's columns, at least two.</param>
    /// <param name="ys">Rising data Y of the field's rows, at least two.</param>
    /// <param name="field">Values, [row, column]; NaN leaves the cells round it out.</param>
    /// <param name="level">The value.</param>
    /// <param name="pen">How the line is drawn.</param>
    /// <param name="label">What is written on the longest piece; empty for nothing.</param>
    public void Contour(
        IReadOnlyList<double> xs,
        IReadOnlyList<double> ys,
        double[,] field,
        double level,
        Pen pen,
        string label = ""
    )
    {
        ArgumentNullException.ThrowIfNull(pen);
        var pieces = Contours.Trace(xs, ys, field, level).Select(l => l.Select(p => Map(p.X, p.Y)).ToArray()).ToList();
        foreach (var piece in pieces)
            content.Add(d => d.Polyline(piece, pen));
        if (pieces.Count == 0 || label.Length == 0)
            return;
        var longest = pieces.MaxBy(p => p.Length)!;
        (double cx, double cy) = longest[longest.Length / 2];
        double half = TextFont.Width(label, new TextStyle(11)) / 2;
        content.Add(d => d.Rectangle(cx - half - 2, cy - 7, 2 * half + 4, 14, Ink.Paper.WithOpacity(0.85)));
        content.Add(d => d.Text(cx, cy + 4, label, new TextStyle(11, TextAnchor.Middle) { Ink = pen.Ink }));
    }

    /// <summary>A text at a point.</summary>
    /// <param name="dataX">On the horizontal axis.</param>
    /// <param name="dataY">On the vertical axis.</param>
    /// <param name="text">The text.</param>
    /// <param name="style">How it is set; 11 pixels from its start by default.</param>
    public void Note(double dataX, double dataY, string text, TextStyle? style = null)
    {
        (double px, double py) = Map(dataX, dataY);
        content.Add(d => d.Text(px, py, text, style ?? new TextStyle(11)));
    }

    /// <summary>Draws everything: grid lines, content, frame, ticks, labels, legend. Call it once, last.</summary>
    public void Finish()
    {
        PlotFrame.Grid(this, drawing, x, y, width, height);
        drawing.Clip(x, y, width, height, inner => content.ForEach(draw => draw(inner)));
        PlotFrame.Labels(this, drawing, x, y, width, height);
        PlotFrame.Legend(drawing, legend, x + width, y - 9);
    }

    private void Name(string? name, Ink? fill, Pen? pen, double radius)
    {
        if (name is not null)
            legend.Add(new LegendEntry(name, fill, pen, radius));
    }
}
