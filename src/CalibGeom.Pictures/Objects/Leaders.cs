using CalibGeom.Pictures.Drawings;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Objects;

/// <summary>
/// Names beside a view, each with a leader to what it names. They stand in one column, in the order of the heights of
/// their places, so that no leader reaches another's text.
/// </summary>
internal sealed class Leaders(Sheet sheet)
{
    private const double Line = 3.5,
        Reach = 0.7;
    private readonly List<(double X, double Y, string Text, string Feature)> wanted = [];

    internal int Count => wanted.Count;

    internal static double HeightOf(int count) => count * Line;

    internal void Add(Vector2D place, string text, string feature = "") =>
        wanted.Add((place.X, place.Y, text, feature));

    /// <summary>Draws them with their texts at the right of a place; returns what found no room.</summary>
    internal IReadOnlyList<string> Draw(double x, double top, double bottom)
    {
        var left = new List<string>();
        double[] ys = Spread([.. wanted.OrderBy(w => w.Y).ThenBy(w => w.X).Select(w => w.Y)], top, bottom);
        int i = 0;
        foreach ((double px, double py, string text, string feature) in wanted.OrderBy(w => w.Y).ThenBy(w => w.X))
        {
            double y = ys[i++];
            var style = new TextStyle(Sheet.TextSize) { Ink = Ink.Blue, Feature = feature };
            Vector2D end = (x - Reach, y);
            if (!sheet.IsFree((px, py), end) || !sheet.TryText(x, y + 0.3 * Sheet.TextSize, text, style))
            {
                left.Add(text);
                continue;
            }
            sheet.Line((px, py), end, "leader");
            Vector2D dot = Sheet.Px((px, py));
            sheet.Drawing.Disc(dot.X, dot.Y, 0.4 * Sheet.PixelsPerMm, Ink.Blue);
        }
        return left;
    }

    /// <summary>Heights at least a line apart, as near to the wanted ones as going down and back up gives.</summary>
    private static double[] Spread(double[] ys, double top, double bottom)
    {
        for (int i = 0; i < ys.Length; i++)
            ys[i] = Math.Max(ys[i], i == 0 ? top + Line / 2 : ys[i - 1] + Line);
        for (int i = ys.Length - 1; i >= 0; i--)
            ys[i] = Math.Min(
                ys[i],
                i == ys.Length - 1 ? Math.Max(bottom - Line / 2, top + Line * ys.Length) : ys[i + 1] - Line
            );
        return ys;
    }
}
