using CalibGeom.Cli.Shared.Terminals;
using Spectre.Console;

namespace CalibGeom.Cli.Shared;

/// <summary>Rows of words with aligned columns.</summary>
internal static class TextTable
{
    private const int Gap = 2;

    /// <summary>Writes rows, all columns flush left.</summary>
    internal static void WriteLeft(TextWriter writer, IReadOnlyList<string[]> rows) =>
        Write(writer, rows, flushLeft: int.MaxValue);

    /// <summary>Writes rows; the first column is flush left, the others flush right.</summary>
    internal static void Write(TextWriter writer, IReadOnlyList<string[]> rows) => Write(writer, rows, flushLeft: 1);

    private static void Write(TextWriter writer, IReadOnlyList<string[]> rows, int flushLeft)
    {
        int columns = rows.Max(r => r.Length);
        var table = new Grid();
        for (int c = 0; c < columns; c++)
            table.AddColumn(
                new GridColumn
                {
                    Padding = new Padding(0, 0, c < columns - 1 ? Gap : 0, 0),
                    Alignment = c < flushLeft ? Justify.Left : Justify.Right,
                    NoWrap = c >= flushLeft,
                }
            );
        foreach (string[] row in rows)
            table.AddRow([
                .. Enumerable.Range(0, columns).Select(c => new Text(c < row.Length ? PlainWriter.Plain(row[c]) : "")),
            ]);
        foreach (string line in Screen.Lines(table, (writer as PlainWriter)?.Width))
            writer.WriteLine(line);
    }
}
