using CalibGeom.Planar;

namespace CalibGeom.Pictures.Drawings;

/// <summary>
/// A picture described once and written as SVG, PNG or PDF. X runs right and Y down, in pixels of 1/96 inch; later
/// shapes cover earlier ones. The same calls give the same SVG, byte for byte. Not safe to share between threads.
/// </summary>
public sealed class Drawing
{
    private static readonly string[] Endings = [".svg", ".png", ".pdf"];
    private readonly List<Shape> shapes = [];

    /// <summary>An empty drawing on white.</summary>
    /// <param name="width">Pixels, above 0 and at most 10000.</param>
    /// <param name="height">Pixels, above 0 and at most 10000.</param>
    /// <param name="title">What the picture shows, for those who cannot see it; written into the SVG.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of range.</exception>
    public Drawing(double width, double height, string title = "")
    {
        ArgumentNullException.ThrowIfNull(title);
        Width = Require(width, nameof(width));
        Height = Require(height, nameof(height));
        Title = title;
    }

    /// <summary>Pixels.</summary>
    public double Width { get; }

    /// <summary>Pixels.</summary>
    public double Height { get; }

    /// <summary>What the picture shows.</summary>
    public string Title { get; }

    /// <summary>
    /// The colour behind everything, or null for none, so that a page shows through. White by default.
    /// </summary>
    public Ink? Ground { get; init; } = Ink.Paper;

    internal IReadOnlyList<Shape> Shapes => shapes;

    /// <summary>A line.</summary>
    /// <param name="x0">Start, pixels.</param>
    /// <param name="y0">Start, pixels.</param>
    /// <param name="x1">End, pixels.</param>
    /// <param name="y1">End, pixels.</param>
    /// <param name="pen">How it is drawn.</param>
    public void Line(double x0, double y0, double x1, double y1, Pen pen) => Polyline([(x0, y0), (x1, y1)], pen);

    /// <summary>A line through points.</summary>
    /// <param name="points">Pixels; fewer than two draw nothing.</param>
    /// <param name="pen">How it is drawn.</param>
    /// <param name="role">What the line is for, such as <c>leader</c>: a class in the SVG. Empty by default.</param>
    public void Polyline(IEnumerable<Vector2D> points, Pen pen, string role = "") => Polylines([points], pen, role);

    /// <summary>Lines through points, drawn as one shape.</summary>
    /// <param name="lines">Pixels; a line of fewer than two points draws nothing.</param>
    /// <param name="pen">How they are drawn.</param>
    /// <param name="role">What the lines are for, such as <c>leader</c>: a class in the SVG. Empty by default.</param>
    public void Polylines(IEnumerable<IEnumerable<Vector2D>> lines, Pen pen, string role = "")
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(pen);
        ArgumentNullException.ThrowIfNull(role);
        var drawn = lines.Select(l => l.ToArray()).Where(l => l.Length > 1).ToArray();
        if (drawn.Length > 0)
            shapes.Add(new PathShape(drawn, false, null, pen) { Role = role });
    }

    /// <summary>A raster.</summary>
    /// <param name="x">Left, pixels.</param>
    /// <param name="y">Top, pixels.</param>
    /// <param name="width">Pixels.</param>
    /// <param name="height">Pixels.</param>
    /// <param name="png">The raster as a PNG.</param>
    public void Image(double x, double y, double width, double height, ReadOnlySpan<byte> png) =>
        shapes.Add(new ImageShape(x, y, width, height, png.ToArray()));

    /// <summary>A rectangle.</summary>
    /// <param name="x">Left, pixels.</param>
    /// <param name="y">Top, pixels.</param>
    /// <param name="width">Pixels.</param>
    /// <param name="height">Pixels.</param>
    /// <param name="fill">Its colour inside, or null.</param>
    /// <param name="pen">Its border, or null.</param>
    public void Rectangle(double x, double y, double width, double height, Ink? fill, Pen? pen = null) =>
        Rings(
            [
                [(x, y), (x + width, y), (x + width, y + height), (x, y + height)],
            ],
            fill,
            pen
        );

    /// <summary>A polygon.</summary>
    /// <param name="points">Its corners in pixels; the last joins the first.</param>
    /// <param name="fill">Its colour inside, or null.</param>
    /// <param name="pen">Its border, or null.</param>
    public void Polygon(IEnumerable<Vector2D> points, Ink? fill, Pen? pen = null) => Rings([points], fill, pen);

    /// <summary>Rings filled together by the even-odd rule, so that a ring inside another is a hole.</summary>
    /// <param name="rings">Corners in pixels.</param>
    /// <param name="fill">The colour inside, or null.</param>
    /// <param name="pen">The borders, or null.</param>
    public void Rings(IEnumerable<IEnumerable<Vector2D>> rings, Ink? fill, Pen? pen = null)
    {
        ArgumentNullException.ThrowIfNull(rings);
        var lines = rings.Select(r => r.ToArray()).Where(r => r.Length > 1).ToArray();
        if (lines.Length > 0)
            shapes.Add(new PathShape(lines, true, fill, pen));
    }

    /// <summary>A circle.</summary>
    /// <param name="x">Centre, pixels.</param>
    /// <param name="y">Centre, pixels.</param>
    /// <param name="radius">Pixels.</param>
    /// <param name="fill">Its colour inside, or null.</param>
    /// <param name="pen">Its border, or null.</param>
    public void Disc(double x, double y, double radius, Ink? fill, Pen? pen = null) =>
        shapes.Add(new DiscShape(x, y, radius, fill, pen));

    /// <summary>A line of text.</summary>
    /// <param name="x">Where the anchor stands, pixels.</param>
    /// <param name="y">The baseline, pixels.</param>
    /// <param name="text">The text, without line breaks; empty draws nothing.</param>
    /// <param name="style">How it is set; 13 pixels, dark, from its start by default.</param>
    public void Text(double x, double y, string text, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > 0)
            shapes.Add(new TextShape(x, y, text, style ?? new TextStyle()));
    }

    /// <summary>Draws shapes of which only the part inside a rectangle is seen.</summary>
    /// <param name="x">Left, pixels.</param>
    /// <param name="y">Top, pixels.</param>
    /// <param name="width">Pixels.</param>
    /// <param name="height">Pixels.</param>
    /// <param name="draw">Draws into the drawing it is given, which has the same coordinates.</param>
    public void Clip(double x, double y, double width, double height, Action<Drawing> draw)
    {
        ArgumentNullException.ThrowIfNull(draw);
        var inner = new Drawing(Width, Height);
        draw(inner);
        if (inner.shapes.Count > 0)
            shapes.Add(new ClipShape(x, y, width, height, inner.shapes.ToArray()));
    }

    /// <summary>Writes the picture as SVG 1.1: UTF-8, text kept as text.</summary>
    /// <param name="stream">Where to; left open.</param>
    public void WriteSvg(Stream stream) => SvgWriter.Write(this, stream);

    /// <summary>Writes the picture as PNG.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="scale">Dots for each pixel of the drawing, above 0 and at most 8; 2 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scale is out of range.</exception>
    public void WritePng(Stream stream, double scale = 2)
    {
        ArgumentNullException.ThrowIfNull(stream);
        PngWriter.Write(this, stream, scale);
    }

    /// <summary>Writes the picture as PDF of one page, as large as the drawing, lines kept as lines.</summary>
    /// <param name="stream">Where to; left open.</param>
    public void WritePdf(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        PdfWriter.Write([this], stream);
    }

    /// <summary>Writes the picture in the format that a file's name asks for.</summary>
    /// <param name="name">A name that ends in <c>.svg</c>, <c>.png</c> or <c>.pdf</c>, in any case.</param>
    /// <param name="stream">Where to; left open.</param>
    /// <exception cref="InputException">The name ends otherwise.</exception>
    public void Write(string name, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        RequireName(name);
        if (name.EndsWith(".svg", StringComparison.OrdinalIgnoreCase))
            WriteSvg(stream);
        else if (name.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase))
            WritePdf(stream);
        else
            WritePng(stream);
    }

    /// <summary>
    /// Refuses a file name that asks for no known picture format, so that a command can say so before it works.
    /// </summary>
    /// <param name="name">A name that should end in <c>.svg</c>, <c>.png</c> or <c>.pdf</c>.</param>
    /// <exception cref="InputException">The name ends otherwise.</exception>
    public static void RequireName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (!Endings.Any(e => name.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
            throw new InputException(
                InputIds.File,
                $"Cannot draw {name}: a picture's name ends in .svg, .png or .pdf. Name it so."
            );
    }

    private static double Require(double size, string name) =>
        size is > 0 and <= 10000
            ? size
            : throw new ArgumentOutOfRangeException(
                name,
                size,
                "A drawing is more than 0 and at most 10000 pixels wide and high."
            );
}
