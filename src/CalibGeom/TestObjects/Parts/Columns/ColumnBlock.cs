namespace CalibGeom.TestObjects.Parts.Columns;

/// <summary>
/// Where the columns stand: a staggered block, rows of equal pitch, in an order scrambled by a fixed seed so that place
/// says nothing of diameter. Columns are numbered by diameter as listed, copy by copy: column 1 and 2 are the two
/// copies of the first diameter.
/// </summary>
internal sealed class ColumnBlock
{
    private static readonly double RowShare = Math.Sqrt(3) / 2;
    private readonly ColumnsSpec spec;
    private readonly ColumnShape[] shapes;

    internal ColumnBlock(ColumnsSpec spec, int perRow, PixelGrid pixels)
    {
        this.spec = spec;
        PerRow = perRow;
        shapes = [.. spec.Diameters.Select(d => new ColumnShape(spec, d))];
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

    /// <summary>The shape of a column.</summary>
    /// <param name="index">Its number less one.</param>
    internal ColumnShape Shape(int index) => shapes[index / spec.Copies];

    /// <summary>The diameter of a column, mm.</summary>
    /// <param name="index">Its number less one.</param>
    internal double Diameter(int index) => spec.Diameters[index / spec.Copies];

    /// <summary>
    /// The row lengths worth trying: from a square block to one twice as long, the last row at least two thirds full;
    /// four columns stand two by two.
    /// </summary>
    internal static IReadOnlyList<int> RowLengths(int count)
    {
        // Rows lie closer than the columns in them, so that 0.6 of the count gives a block that is about square.
        int least = (int)Math.Ceiling(Math.Sqrt(count * 0.6)),
            most = Math.Min(count, (int)Math.Ceiling(2 * Math.Sqrt(count)) - 1);
        int[] full =
        [
            .. Enumerable.Range(least, most - least + 1).Where(m => (count + m - 1) / m * m - count <= m / 3),
        ];
        return full.Length > 0 ? full : [least];
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
