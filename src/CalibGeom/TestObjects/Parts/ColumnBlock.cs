using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// Where the columns stand: a staggered block, rows of equal pitch, in an order scrambled by a fixed seed so that place
/// says nothing of
/// diameter. Columns are numbered by diameter as listed, copy by copy: column 1 and 2 are the two copies of the first
/// diameter.
/// </summary>
internal sealed class ColumnBlock
{
    private static readonly double RowShare = Math.Sqrt(3) / 2;
    private readonly ColumnsSpec spec;
    private readonly ColumnPart[] parts;

    internal ColumnBlock(ColumnsSpec spec, int perRow, PixelGrid pixels)
    {
        this.spec = spec;
        PerRow = perRow;
        parts = [.. spec.Diameters.Select(d => new ColumnPart(spec, d))];
        int count = spec.Diameters.Count * spec.Copies;
        Place = Scrambled(count);
        int rows = (count + perRow - 1) / perRow;
        Roots =
        [
            .. Place.Select(p =>
                pixels.Position(
                    (p % perRow - perRow / 2 + (p / perRow % 2 == 1 ? 0.5 : 0)) * spec.Pitch,
                    (p / perRow - rows / 2) * spec.Pitch * RowShare
                )
            ),
        ];
    }

    /// <summary>Columns in a row.</summary>
    internal int PerRow { get; }

    /// <summary>
    /// The place of each column in the block: row times <see cref="PerRow"/> plus place in the row, both from 0.
    /// </summary>
    internal int[] Place { get; }

    /// <summary>The centre of each column's root, mm from the place in the middle.</summary>
    internal (double X, double Y)[] Roots { get; }

    /// <summary>The part of a column.</summary>
    /// <param name="index">Its number less one.</param>
    internal ColumnPart Part(int index) => parts[index / spec.Copies];

    /// <summary>The diameter of a column, mm.</summary>
    /// <param name="index">Its number less one.</param>
    internal double Diameter(int index) => spec.Diameters[index / spec.Copies];

    /// <summary>The row lengths worth trying, from a square block to one of a single row.</summary>
    internal static IEnumerable<int> RowLengths(int count)
    {
        int least = Math.Max(1, (int)Math.Floor(Math.Sqrt(count * 0.6)));
        return Enumerable
            .Range(least, count - least + 1)
            .Where(m => m == count || (count + m - 1) / m * m - count <= m / 3)
            .Where(m => m <= 2 * Math.Sqrt(count) || count <= 4);
    }

    /// <summary>
    /// A fixed permutation: Fisher and Yates' shuffle with a small linear congruential generator of our own, the same
    /// everywhere.
    /// </summary>
    private static int[] Scrambled(int count)
    {
        int[] order = [.. Enumerable.Range(0, count)];
        uint state = 20011;
        for (int i = count - 1; i > 0; i--)
        {
            state = state * 1664525 + 1013904223;
            int j = (int)((ulong)state * (uint)(i + 1) >> 32);
            (order[i], order[j]) = (order[j], order[i]);
        }
        return order;
    }
}
