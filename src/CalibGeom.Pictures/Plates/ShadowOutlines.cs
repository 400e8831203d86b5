using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Plates;

namespace CalibGeom.Pictures.Plates;

/// <summary>
/// The outlines of a shadow, or of everything within a distance of it, as few points as a picture needs.
/// </summary>
internal static class ShadowOutlines
{
    private const int Step = 2;
    private const double Far = 1e4;

    /// <summary>Rings round all that lies no further from the shadow than a distance, mm.</summary>
    internal static IEnumerable<IReadOnlyList<Vector2D>> Trace(ShadowMap map, double distance)
    {
        int columns = (map.Columns + Step - 1) / Step,
            rows = (map.Rows + Step - 1) / Step;
        var field = new double[rows + 2, columns + 2];
        for (int row = 0; row < rows + 2; row++)
        for (int column = 0; column < columns + 2; column++)
            field[row, column] =
                row == 0 || column == 0 || row > rows || column > columns
                    ? Far
                    : Math.Min(Far, map.Distance((column - 1) * Step, (row - 1) * Step));
        double[] xs = Enumerable
            .Range(0, columns + 2)
            .Select(i => map.MinX + ((i - 1) * Step + 0.5) * map.Cell)
            .ToArray();
        double[] ys = Enumerable.Range(0, rows + 2).Select(i => map.MinY + ((i - 1) * Step + 0.5) * map.Cell).ToArray();
        return Contours.Trace(xs, ys, field, distance + map.Cell / 2).Select(ring => Simplify(ring, map.Cell / 2));
    }

    /// <summary>
    /// Leaves out points nearer than a tolerance to the line through those kept (Douglas and Peucker, Cartographica 10,
    /// 1973).
    /// </summary>
    private static List<Vector2D> Simplify(IReadOnlyList<Vector2D> ring, double tolerance)
    {
        var keep = new bool[ring.Count];
        keep[0] = keep[^1] = keep[ring.Count / 2] = true;
        var open = new Stack<(int First, int Last)>([(0, ring.Count / 2), (ring.Count / 2, ring.Count - 1)]);
        while (open.TryPop(out (int First, int Last) piece))
        {
            (int Index, double Away) worst = (-1, tolerance);
            for (int i = piece.First + 1; i < piece.Last; i++)
                if (Away(ring[i], ring[piece.First], ring[piece.Last]) is var away && away > worst.Away)
                    worst = (i, away);
            if (worst.Index < 0)
                continue;
            keep[worst.Index] = true;
            open.Push((piece.First, worst.Index));
            open.Push((worst.Index, piece.Last));
        }
        return ring.Where((_, i) => keep[i]).ToList();
    }

    private static double Away(Vector2D p, Vector2D a, Vector2D b)
    {
        double ux = b.X - a.X,
            uy = b.Y - a.Y,
            square = ux * ux + uy * uy;
        double t = square > 0 ? Math.Clamp(((p.X - a.X) * ux + (p.Y - a.Y) * uy) / square, 0, 1) : 0;
        return double.Hypot(p.X - a.X - t * ux, p.Y - a.Y - t * uy);
    }
}
