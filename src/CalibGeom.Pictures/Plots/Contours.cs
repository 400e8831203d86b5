using CalibGeom.Planar;

namespace CalibGeom.Pictures.Plots;

/// <summary>
/// Lines on which a field sampled on a rectangular lattice has a value, by linear interpolation in triangles, so that
/// no cell is ambiguous.
/// </summary>
public static class Contours
{
    /// <summary>Traces one level.</summary>
    /// <param name="xs">Rising X of the columns, at least two.</param>
    /// <param name="ys">Rising Y of the rows, at least two.</param>
    /// <param name="field">Values, [row, column]; NaN leaves the cells round it out.</param>
    /// <param name="level">The value.</param>
    /// <returns>Polylines; a closed one ends where it began.</returns>
    /// <exception cref="ArgumentException">The field does not have as many rows and columns as there are Y and
    /// X.</exception>
    public static IReadOnlyList<IReadOnlyList<Vector2D>> Trace(
        IReadOnlyList<double> xs,
        IReadOnlyList<double> ys,
        double[,] field,
        double level
    )
    {
        ArgumentNullException.ThrowIfNull(xs);
        ArgumentNullException.ThrowIfNull(ys);
        ArgumentNullException.ThrowIfNull(field);
        if (field.GetLength(0) != ys.Count || field.GetLength(1) != xs.Count || xs.Count < 2 || ys.Count < 2)
            throw new ArgumentException(
                $"A field of {ys.Count} rows and {xs.Count} columns is needed, at least 2 each; got "
                    + $"{field.GetLength(0)} by {field.GetLength(1)}.",
                nameof(field)
            );
        var links = new Dictionary<(int, int), List<(int, int)>>();
        int columns = xs.Count;
        for (int r = 0; r + 1 < ys.Count; r++)
        for (int c = 0; c + 1 < columns; c++)
        {
            int a = r * columns + c,
                b = a + 1,
                d = a + columns,
                e = d + 1;
            Cut(a, b, e);
            Cut(a, e, d);
        }
        return Join(links).Select(chain => (IReadOnlyList<Vector2D>)chain.Select(Point).ToArray()).ToArray();

        double Value(int node) => field[node / columns, node % columns];

        void Cut(int a, int b, int c)
        {
            double va = Value(a),
                vb = Value(b),
                vc = Value(c);
            bool sa = va >= level,
                sb = vb >= level,
                sc = vc >= level;
            if ((sa == sb && sb == sc) || double.IsNaN(va + vb + vc))
                return;
            if (sa == sb)
                Link(Edge(b, c), Edge(c, a));
            else if (sb == sc)
                Link(Edge(c, a), Edge(a, b));
            else
                Link(Edge(a, b), Edge(b, c));
        }

        void Link((int, int) one, (int, int) other)
        {
            foreach (((int, int) from, (int, int) to) in (((int, int), (int, int))[])[(one, other), (other, one)])
            {
                if (!links.TryGetValue(from, out var list))
                    links[from] = list = [];
                list.Add(to);
            }
        }

        static (int, int) Edge(int p, int q) => p < q ? (p, q) : (q, p);

        Vector2D Point((int P, int Q) edge)
        {
            double t = (level - Value(edge.P)) / (Value(edge.Q) - Value(edge.P));
            double px = xs[edge.P % columns],
                py = ys[edge.P / columns];
            return (px + t * (xs[edge.Q % columns] - px), py + t * (ys[edge.Q / columns] - py));
        }
    }

    private static IEnumerable<List<(int, int)>> Join(Dictionary<(int, int), List<(int, int)>> links)
    {
        var starts = links.Keys.OrderBy(k => links[k].Count).ThenBy(k => k).ToArray();
        foreach (var start in starts)
        {
            if (links[start].Count == 0)
                continue;
            var chain = new List<(int, int)> { start };
            for (var at = start; links[at].Count > 0; )
            {
                var next = links[at][0];
                links[at].RemoveAt(0);
                links[next].Remove(at);
                chain.Add(at = next);
            }
            yield return chain;
        }
    }
}
