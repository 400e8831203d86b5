using System.Numerics;

namespace CalibGeom.Planar;

/// <summary>
/// The order in which points are put into a triangulation: neighbours in the order are near each other, so that the
/// walk from one to the next is short, and the order never changes.
/// </summary>
internal static class InsertionOrder
{
    // From here on points go in by rounds.
    private const int Many = 10_000;

    // Each round holds so many times the points of all before it.
    private const int RoundBits = 2;

    // Cells of the curve along each side.
    private const int CurveBits = 15;

    /// <summary>The numbers of the points in order.</summary>
    /// <param name="points">The points.</param>
    /// <param name="low">The lower left corner of the square that they lie in.</param>
    /// <param name="high">Its upper right corner.</param>
    internal static int[] Of(GridPoint[] points, GridPoint low, GridPoint high) =>
        points.Length <= Many ? Boustrophedon(points, low, high) : ByRounds(points, low, high);

    /// <summary>Square bins, row by row, back and forth.</summary>
    private static int[] Boustrophedon(GridPoint[] points, GridPoint low, GridPoint high)
    {
        int bins = (int)Math.Max(1, Math.Sqrt(Math.Sqrt(points.Length)));
        long width = (long)high.X - low.X + 1,
            height = (long)high.Y - low.Y + 1;
        return Sorted(
            points,
            p =>
            {
                int row = (int)((p.Y - (long)low.Y) * bins / height),
                    column = (int)((p.X - (long)low.X) * bins / width);
                return row * bins + (row % 2 == 0 ? column : bins - 1 - column);
            }
        );
    }

    /// <summary>
    /// Rounds drawn at random, each along a Hilbert curve (Amenta, Choi and Rote, Incremental constructions con BRIO,
    /// 2003): whatever the points, few triangles are expected to change with each. In an order along rows, points on
    /// circles about one centre change more and more.
    /// </summary>
    private static int[] ByRounds(GridPoint[] points, GridPoint low, GridPoint high)
    {
        double scale = (1 << CurveBits) / (1.0 + Math.Max((long)high.X - low.X, (long)high.Y - low.Y));
        int[] along = Sorted(points, p => Hilbert((int)((p.X - low.X) * scale), (int)((p.Y - low.Y) * scale)));
        var rounds = new List<int>[32 / RoundBits + 1];
        for (int r = 0; r < rounds.Length; r++)
            rounds[r] = new List<int>(r == 0 ? along.Length : 0);
        foreach (int i in along)
            rounds[Round(i)].Add(i);
        return [.. rounds.Reverse().SelectMany(r => r)];
    }

    /// <summary>The round of a point, counted from the last; all but one in four are in the last.</summary>
    private static int Round(int number) =>
        // Multiples of the golden ratio scatter consecutive numbers evenly.
        BitOperations.LeadingZeroCount((uint)number * 0x9E3779B9) / RoundBits;

    private static int[] Sorted(GridPoint[] points, Func<GridPoint, int> place)
    {
        var keys = new long[points.Length];
        for (int i = 0; i < keys.Length; i++)
            keys[i] = (long)place(points[i]) << 32 | (uint)i;
        Array.Sort(keys);
        return Array.ConvertAll(keys, k => (int)(uint)k);
    }

    private static int Hilbert(int x, int y)
    {
        int along = 0;
        for (int side = 1 << (CurveBits - 1); side > 0; side >>= 1)
        {
            bool right = (x & side) > 0,
                up = (y & side) > 0;
            along = along << 2 | (right ? 3 : 0) ^ (up ? 1 : 0);
            if (up)
                continue;
            if (right)
                (x, y) = (~x, ~y);
            (x, y) = (y, x);
        }
        return along;
    }
}
