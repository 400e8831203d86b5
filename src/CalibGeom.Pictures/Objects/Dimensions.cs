using CalibGeom.Pictures.Drawings;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Objects;

/// <summary>
/// Dimensions beside a view. Each takes the nearest row, and on it the first place along the line, where its text meets
/// nothing and its lines cross no text; one that finds none is written into a list instead.
/// </summary>
internal sealed class Dimensions(Sheet sheet)
{
    private const double Gap = 5.2,
        Row = 4.4,
        Over = 0.8,
        Tail = 2.0,
        Short = 4.5;
    private const int Rows = 6;
    private static readonly double[] Shares = [0.5, 0.35, 0.65, 0.2, 0.8];

    /// <summary>What found no place.</summary>
    internal List<string> Left { get; } = [];

    /// <summary>A level dimension below a view (or above it).</summary>
    /// <param name="from">Left end, mm of paper, with the height that the extension line starts from.</param>
    /// <param name="to">Right end.</param>
    /// <param name="edge">The view's edge, mm of paper.</param>
    /// <param name="down">Whether rows go down from the edge.</param>
    /// <param name="text">The size as text.</param>
    /// <param name="feature">Its feature, or empty.</param>
    internal void Level(Vector2D from, Vector2D to, double edge, bool down, string text, string feature)
    {
        double way = down ? 1 : -1;
        for (int row = 0; row < Rows; row++)
        {
            double y = edge + way * (Gap + row * Row);
            Vector2D[] a = [(from.X, from.Y + way * Over), (from.X, y + way * Over)],
                b = [(to.X, to.Y + way * Over), (to.X, y + way * Over)];
            if (
                !sheet.IsFree(a[0], a[1])
                || !sheet.IsFree(b[0], b[1])
                || !sheet.IsFree((from.X - Tail, y), (to.X + Tail, y))
            )
                continue;
            if (!Write(Places(from.X, to.X, y), [a, b, [(from.X - Tail, y), (to.X + Tail, y)]], text, feature, 0))
                continue;
            Draw(a, b, (from.X, y), (to.X, y), 1, 0);
            return;
        }
        Left.Add(feature.Length > 0 ? $"{feature} {text}" : text);
    }

    /// <summary>An upright dimension left of a view.</summary>
    internal void Upright(Vector2D low, Vector2D high, double edge, string text, string feature)
    {
        for (int row = 0; row < Rows; row++)
        {
            double x = edge - (Gap + row * Row);
            Vector2D[] a = [(low.X - Over, low.Y), (x - Over, low.Y)],
                b = [(high.X - Over, high.Y), (x - Over, high.Y)];
            if (
                !sheet.IsFree(a[0], a[1])
                || !sheet.IsFree(b[0], b[1])
                || !sheet.IsFree((x, low.Y + Tail), (x, high.Y - Tail))
            )
                continue;
            if (
                !Write(
                    Places(low.Y, high.Y, x, text),
                    [a, b, [(x, low.Y + Tail), (x, high.Y - Tail)]],
                    text,
                    feature,
                    90
                )
            )
                continue;
            Draw(a, b, (x, low.Y), (x, high.Y), 0, -1);
            return;
        }
        Left.Add(feature.Length > 0 ? $"{feature} {text}" : text);
    }

    /// <summary>Above the line, then beyond its right end.</summary>
    private static IEnumerable<(double X, double Y, TextAnchor Anchor)> Places(double from, double to, double y)
    {
        foreach (double share in Shares)
            yield return (from + (to - from) * share, y - 0.8, TextAnchor.Middle);
        yield return (to + Tail + 0.5, y + 0.8, TextAnchor.Start);
        yield return (from - Tail - 0.5, y + 0.8, TextAnchor.End);
    }

    private static IEnumerable<(double X, double Y, TextAnchor Anchor)> Places(
        double low,
        double high,
        double x,
        string text
    )
    {
        // With room to spare: the extension lines of a longer dimension pass both ends.
        if (Sheet.Measure(text) + 1.2 < low - high)
            foreach (double share in Shares)
                yield return (x - 0.8, low + (high - low) * share, TextAnchor.Middle);
        yield return (x + 0.8, high - Tail - 0.5, TextAnchor.Start);
        yield return (x + 0.8, low + Tail + 0.5, TextAnchor.End);
    }

    private bool Write(
        IEnumerable<(double X, double Y, TextAnchor Anchor)> places,
        Vector2D[][] own,
        string text,
        string feature,
        double turn
    ) =>
        places.Any(p =>
        {
            var style = new TextStyle(Sheet.TextSize, p.Anchor, Turn: turn) { Feature = feature };
            Room room = Sheet.RoomOf(p.X, p.Y, text, style);
            // A picture rounds its coordinates: what only touches may cross there.
            return !own.Any(l => room.Grow(0.005).IsCrossed(l[0], l[1])) && sheet.TryText(p.X, p.Y, text, style);
        });

    private void Draw(Vector2D[] a, Vector2D[] b, Vector2D from, Vector2D to, double dx, double dy)
    {
        sheet.Line(a[0], a[1], "extension");
        sheet.Line(b[0], b[1], "extension");
        double length = Math.Abs(to.X - from.X) + Math.Abs(to.Y - from.Y);
        bool outside = length < Short;
        double way = outside ? -1 : 1;
        sheet.Arrow(from, dx * way, dy * way);
        sheet.Arrow(to, -dx * way, -dy * way);
        double tail = outside ? Tail : 0;
        sheet.Line((from.X - dx * tail, from.Y - dy * tail), (to.X + dx * tail, to.Y + dy * tail), "dimension");
    }
}
