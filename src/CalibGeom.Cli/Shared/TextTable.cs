namespace CalibGeom.Cli.Shared;

/// <summary>Rows of words with aligned columns.</summary>
internal static class TextTable
{
    /// <summary>Writes rows, all columns flush left.</summary>
    internal static void WriteLeft(TextWriter writer, IReadOnlyList<string[]> rows) =>
        Write(writer, rows, flushLeft: int.MaxValue);

    /// <summary>Writes rows; the first column is flush left, the others flush right.</summary>
    internal static void Write(TextWriter writer, IReadOnlyList<string[]> rows) => Write(writer, rows, flushLeft: 1);

    private static void Write(TextWriter writer, IReadOnlyList<string[]> rows, int flushLeft)
    {
        int columns = rows.Max(r => r.Length);
        int[] widths = Enumerable
            .Range(0, columns)
            .Select(c => rows.Max(r => c < r.Length ? r[c].Length : 0))
            .ToArray();
        foreach (string[] row in rows)
            writer.WriteLine(
                string.Join(
                        "  ",
                        row.Select((cell, c) => c < flushLeft ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c]))
                    )
                    .TrimEnd()
            );
    }
}
