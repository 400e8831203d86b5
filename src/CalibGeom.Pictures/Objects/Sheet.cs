using CalibGeom.Pictures.Drawings;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Objects;

/// <summary>
/// A drawing in millimetres of paper that knows where its texts and its thin lines are, so that none is put over
/// another: what asks for a place and gets none is told so and must go elsewhere.
/// </summary>
internal sealed class Sheet
{
    /// <summary>Pixels of a drawing in a millimetre.</summary>
    internal const double PixelsPerMm = 96 / 25.4;

    internal const double TextSize = 2.4;
    private const double Rise = 0.78,
        Fall = 0.24,
        Air = 0.25;
    private static readonly Pen Thin = new(Ink.Muted, 0.13 * PixelsPerMm);
    private readonly List<Room> texts = [];
    private readonly List<(Vector2D A, Vector2D B)> lines = [];

    internal Sheet(Paper paper, string title)
    {
        Paper = paper;
        Drawing = new Drawing(paper.Width * PixelsPerMm, paper.Height * PixelsPerMm, title);
    }

    internal Paper Paper { get; }

    internal Drawing Drawing { get; }

    /// <summary>How wide a text is, mm.</summary>
    internal static double Measure(string text, double size = TextSize, bool bold = false) =>
        TextFont.Width(text, new TextStyle(size * PixelsPerMm, Bold: bold)) / PixelsPerMm;

    /// <summary>Writes a text if nothing is in its way; its point is on the baseline.</summary>
    internal bool TryText(double x, double y, string text, TextStyle style)
    {
        Room room = RoomOf(x, y, text, style);
        if (!IsFree(room))
            return false;
        texts.Add(room);
        Drawing.Text(x * PixelsPerMm, y * PixelsPerMm, text, style with { Size = style.Size * PixelsPerMm });
        return true;
    }

    /// <summary>Writes a text smaller and smaller until it fits into a width, then if nothing is in its way.</summary>
    internal bool TryFit(double x, double y, string text, TextStyle style, double width)
    {
        double natural = Measure(text, style.Size, style.Bold);
        return TryText(
            x,
            y,
            text,
            natural <= width ? style : style with { Size = style.Size * width / Math.Max(natural, 1e-6) }
        );
    }

    /// <summary>Whether a text could stand somewhere.</summary>
    internal bool IsFree(Room room) =>
        room.IsIn(new Room(0, 0, Paper.Width, Paper.Height))
        && !texts.Exists(t => t.Overlaps(room.Grow(Air)))
        && !lines.Exists(l => room.Grow(Air).IsCrossed(l.A, l.B));

    /// <summary>Whether a thin line could run somewhere.</summary>
    internal bool IsFree(Vector2D a, Vector2D b) => !texts.Exists(t => t.Grow(Air).IsCrossed(a, b));

    /// <summary>Draws a thin line that no later text will cross.</summary>
    internal void Line(Vector2D a, Vector2D b, string role)
    {
        lines.Add((a, b));
        Drawing.Polyline([Px(a), Px(b)], Thin, role);
    }

    /// <summary>The frame of the sheet or of a field on it.</summary>
    internal void Border(Room room, double width = 0.3) =>
        Drawing.Rectangle(
            room.X * PixelsPerMm,
            room.Y * PixelsPerMm,
            room.Width * PixelsPerMm,
            room.Height * PixelsPerMm,
            null,
            new Pen(Ink.Dark, width * PixelsPerMm)
        );

    /// <summary>The heading of a view.</summary>
    internal bool Heading(double x, double y, string text) => TryText(x, y, text, new TextStyle(2.8, Bold: true));

    /// <summary>A small filled arrow head with its point at a place.</summary>
    internal void Arrow(Vector2D tip, double dx, double dy)
    {
        const double Long = 1.7,
            Half = 0.32;
        Drawing.Polygon(
            [
                Px(tip),
                Px((tip.X + dx * Long - dy * Half, tip.Y + dy * Long + dx * Half)),
                Px((tip.X + dx * Long + dy * Half, tip.Y + dy * Long - dx * Half)),
            ],
            Ink.Muted
        );
    }

    internal static Vector2D Px(Vector2D p) => (p.X * PixelsPerMm, p.Y * PixelsPerMm);

    /// <summary>The room that a text takes, mm.</summary>
    internal static Room RoomOf(double x, double y, string text, TextStyle style)
    {
        double width = Measure(text, style.Size, style.Bold),
            start = style.Anchor switch
            {
                TextAnchor.Start => 0,
                TextAnchor.Middle => -width / 2,
                _ => -width,
            };
        return style.Turn == 90
            ? new Room(x - Rise * style.Size, y - start - width, (Rise + Fall) * style.Size, width)
            : new Room(x + start, y - Rise * style.Size, width, (Rise + Fall) * style.Size);
    }
}
