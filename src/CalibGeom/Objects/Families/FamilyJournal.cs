using System.Text;
using System.Text.Json;
using CalibGeom.Features.Files;

namespace CalibGeom.Objects.Families;

/// <summary>
/// The rows of a family that are done, one JSON object a line, written as soon as each is: a run that was stopped goes
/// on from it. A line that was cut short is passed over; a file without a single row is begun anew. Safe to use from
/// several threads.
/// </summary>
internal sealed class FamilyJournal : IDisposable
{
    private readonly Lock gate = new();
    private readonly FileToWrite stream;

    /// <exception cref="InputException">It has too many lines, or one that is too long.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be.</exception>
    internal FamilyJournal(string path)
    {
        stream = new FileToWrite(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read));
        try
        {
            Known = Read(stream, path);
            if (Known.Count == 0)
                stream.SetLength(0);
            // A torn line ends here, so that the next one stands for itself.
            if (stream.Length > 0 && stream.Seek(-1, SeekOrigin.End) >= 0 && stream.ReadByte() != '\n')
                stream.WriteByte((byte)'\n');
            stream.Seek(0, SeekOrigin.End);
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    /// <summary>The rows of an earlier run, by number.</summary>
    internal IReadOnlyDictionary<int, FamilyRow> Known { get; }

    internal void Add(FamilyRow row)
    {
        byte[] line = Encoding.UTF8.GetBytes(JsonSerializer.Serialize(row, FamilyJsonContext.Default.FamilyRow) + "\n");
        lock (gate)
        {
            stream.Write(line);
            stream.Flush();
        }
    }

    public void Dispose() => stream.Dispose();

    private static Dictionary<int, FamilyRow> Read(FileToWrite stream, string path)
    {
        var rows = new Dictionary<int, FamilyRow>();
        using var reader = new StreamReader(stream, Encoding.UTF8, leaveOpen: true);
        for (int number = 1; BoundedLine.Read(reader, ReaderLimits.FamilyJournalLineCharacters) is { } line; number++)
        {
            if (number > ReaderLimits.FamilyJournalLines || line.Length > ReaderLimits.FamilyJournalLineCharacters)
                throw new InputException(
                    InputIds.Family,
                    FormattableString.Invariant(
                        $"a journal has at most {ReaderLimits.FamilyJournalLines} lines of {ReaderLimits.FamilyJournalLineCharacters} characters. Move it away, or write to another folder."
                    ),
                    new InputPlace(path, number)
                );
            if (Parse(line) is { } row)
                rows[row.Number] = row;
        }
        return rows;
    }

    private static FamilyRow? Parse(string line)
    {
        try
        {
            FamilyRow? row =
                line.Length == 0 ? null : JsonSerializer.Deserialize(line, FamilyJsonContext.Default.FamilyRow);
            return row is null || double.IsFinite(row.Volume) ? row : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
