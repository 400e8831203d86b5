using System.Text;
using System.Text.Json;

namespace CalibGeom.Objects.Families;

/// <summary>
/// The rows of a family that are done, one JSON object a line, written as soon as each is: a run that was stopped goes
/// on from it. A line that was cut short is passed over. Safe to use from several threads.
/// </summary>
internal sealed class FamilyJournal : IDisposable
{
    private readonly Lock gate = new();
    private readonly FileStream stream;

    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be.</exception>
    internal FamilyJournal(string path)
    {
        stream = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read);
        Known = Read(stream);
        // A torn line ends here, so that the next one stands for itself.
        if (stream.Length > 0 && stream.Seek(-1, SeekOrigin.End) >= 0 && stream.ReadByte() != '\n')
            stream.WriteByte((byte)'\n');
        stream.Seek(0, SeekOrigin.End);
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

    private static Dictionary<int, FamilyRow> Read(FileStream stream)
    {
        var rows = new Dictionary<int, FamilyRow>();
        using var reader = new StreamReader(stream, Encoding.UTF8, leaveOpen: true);
        while (reader.ReadLine() is { } line)
            if (Parse(line) is { } row)
                rows[row.Number] = row;
        return rows;
    }

    private static FamilyRow? Parse(string line)
    {
        try
        {
            return line.Length == 0 ? null : JsonSerializer.Deserialize(line, FamilyJsonContext.Default.FamilyRow);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
