using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Views;
using CalibGeom.Planar;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>The shaded object with the names of its parts on both sides, each with a leader.</summary>
public static class NumberedView
{
    private const double Wide = 170,
        Highest = 130,
        Column = 33,
        Size = 3.1,
        Line = 6.6;

    /// <summary>
    /// Draws it on a transparent ground; names stand on small light plates, so that they can be read on light and dark
    /// pages.
    /// </summary>
    /// <param name="made">The object.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="view">Where it is seen from; <see cref="ViewDirection.Corner"/> by default.</param>
    /// <exception cref="InputException">A design error leaves nothing to draw.</exception>
    public static Drawing Draw(TestObject made, string name, ViewDirection? view = null)
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(name);
        view ??= ViewDirection.Corner;
        ObjectParts parts = ObjectParts.Of(made);
        Box2D extent = Box2D.Round(parts.Mesh, view);
        double scale = Math.Min((Wide - 2 * Column) / extent.Width, Highest / extent.Height),
            high = Math.Max(extent.Height * scale + 4, Line * (made.Boxes.Count + 6) / 2);
        var drawing = new Drawing(Wide * Sheet.PixelsPerMm, high * Sheet.PixelsPerMm, $"Test object {name}")
        {
            Ground = null,
        };
        ShadedImage image = ShadedView.Render(parts.Mesh, view, scale * Sheet.PixelsPerMm * 2);
        double x = (Wide - image.Frame.Width * scale) / 2,
            y = (high - image.Frame.Height * scale) / 2;
        var frame = new Frame(image.Frame, x, y, scale);
        (double px, double py) = Sheet.Px((x, y));
        drawing.Image(px, py, frame.Width * Sheet.PixelsPerMm, frame.Height * Sheet.PixelsPerMm, image.ToPng());
        Name(drawing, frame, high, Places(parts, view, image.Frame, made));
        return drawing;
    }

    private static void Name(
        Drawing drawing,
        Frame frame,
        double high,
        IEnumerable<(double X, double Y, string Text)> places
    )
    {
        (double X, double Y, string Text)[] names =
        [
            .. places
                .Select(n => (frame.MapX(n.X), frame.MapY(n.Y), n.Text))
                .OrderBy(n => n.Item1)
                .ThenBy(n => n.Item2),
        ];
        int half = names.Length / 2;
        Side(drawing, [.. names.Take(half).OrderBy(n => n.Y)], high, false);
        Side(drawing, [.. names.Skip(half).OrderBy(n => n.Y)], high, true);
    }

    private static void Side(Drawing drawing, (double X, double Y, string Text)[] names, double high, bool right)
    {
        double[] ys = [.. names.Select(n => n.Y)];
        for (int i = 0; i < ys.Length; i++)
            ys[i] = Math.Max(ys[i], i == 0 ? 4 : ys[i - 1] + Line);
        for (int i = ys.Length - 1; i >= 0; i--)
            ys[i] = Math.Min(ys[i], i == ys.Length - 1 ? high - 4 : ys[i + 1] - Line);
        double edge = right ? Wide - Column + 4 : Column - 4;
        for (int i = 0; i < names.Length; i++)
        {
            Vector2D end = Sheet.Px((edge, ys[i])),
                place = Sheet.Px((names[i].X, names[i].Y));
            drawing.Polyline([place, end], new Pen(Ink.Paper, 4), "halo");
            drawing.Polyline([place, end], new Pen(Ink.Blue, 1.8), "leader");
            drawing.Disc(place.X, place.Y, 4.2, Ink.Blue, new Pen(Ink.Paper, 1.6));
        }
        for (int i = 0; i < names.Length; i++)
        {
            double width = Sheet.Measure(names[i].Text, Size) + 3,
                x = right ? edge : edge - width;
            Vector2D corner = Sheet.Px((x, ys[i] - 2.4));
            drawing.Rectangle(
                corner.X,
                corner.Y,
                width * Sheet.PixelsPerMm,
                4.8 * Sheet.PixelsPerMm,
                Ink.Paper,
                new Pen(Ink.Blue, 1.2)
            );
            (double tx, double ty) = Sheet.Px((x + width / 2, ys[i] + 1.1));
            drawing.Text(tx, ty, names[i].Text, new TextStyle(Size * Sheet.PixelsPerMm, TextAnchor.Middle));
        }
    }

    /// <summary>For each part the seen dot that is nearest to the middle of all its seen dots.</summary>
    private static IEnumerable<(double X, double Y, string Text)> Places(
        ObjectParts parts,
        ViewDirection view,
        Box2D extent,
        TestObject made
    )
    {
        DepthMap map = DepthMap.Of(parts.Mesh, view, 400 / Math.Max(extent.Width, extent.Height), 0);
        var seen = new SortedDictionary<string, List<(int X, int Y)>>(StringComparer.Ordinal);
        for (int row = 0; row < map.Height; row++)
        for (int column = 0; column < map.Width; column++)
            if (map.TriangleAt(column, row) is >= 0 and int t && TextOf(parts.NameOf(t), made) is { } text)
            {
                if (!seen.TryGetValue(text, out List<(int X, int Y)>? list))
                    seen[text] = list = [];
                list.Add((column, row));
            }
        foreach ((string text, List<(int X, int Y)> all) in seen)
        {
            // Well inside the part, where it is wide enough.
            List<(int X, int Y)> inner = all.FindAll(d => IsInside(parts, map, made, d.X, d.Y, text));
            List<(int X, int Y)> dots = inner.Count > 0 ? inner : all;
            double x = dots.Average(d => d.X),
                y = dots.Average(d => d.Y);
            (int X, int Y) best = dots.MinBy(d => (d.X - x) * (d.X - x) + (d.Y - y) * (d.Y - y));
            yield return (map.Frame.Left + (best.X + 0.5) / map.Dots, map.Frame.Top - (best.Y + 0.5) / map.Dots, text);
        }
    }

    private static bool IsInside(ObjectParts parts, DepthMap map, TestObject made, int x, int y, string text)
    {
        const int Deep = 3;
        foreach ((int dx, int dy) in (ReadOnlySpan<(int, int)>)[(-Deep, 0), (Deep, 0), (0, -Deep), (0, Deep)])
            if (
                x + dx < 0
                || y + dy < 0
                || x + dx >= map.Width
                || y + dy >= map.Height
                || map.TriangleAt(x + dx, y + dy) is not (>= 0 and int t)
                || TextOf(parts.NameOf(t), made) != text
            )
                return false;
        return true;
    }

    private static string? TextOf(string part, TestObject made) =>
        part == KnownFeatures.Plinth ? null
        : FeatureId.TryParse(part)?.Part != KnownFeatures.Column ? part
        : made.Columns.Count > 1 ? $"column1 to {made.Columns.Count}"
        : part;
}
