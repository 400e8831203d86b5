using System.Text;

namespace CalibGeom.Verification.Tuning;

/// <summary>The log of trials: JSON Lines, one trial a line in the order of printing, only ever appended to.</summary>
public static class TrialLog
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Reads a log.</summary>
    /// <param name="reader">The text; left open.</param>
    /// <param name="name">The log's name for messages.</param>
    /// <exception cref="InputException">A line is no trial; the message names the line, the path and the
    /// limit.</exception>
    public static IReadOnlyList<Trial> Read(TextReader reader, string name = "log")
    {
        ArgumentNullException.ThrowIfNull(reader);
        var trials = new List<Trial>();
        int line = 0;
        while (reader.ReadLine() is { } text)
        {
            line++;
            if (!string.IsNullOrWhiteSpace(text))
                trials.Add(TrialJson.Parse(text, $"{name}, line {line}"));
        }
        return trials;
    }

    /// <summary>Reads a log file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">The file does not exist or a line is no trial.</exception>
    public static IReadOnlyList<Trial> ReadFile(string path)
    {
        if (!File.Exists(path))
            throw new InputException($"There is no log {path}. Start one with calibgeom tune add.");
        using var reader = new StreamReader(path, Utf8);
        return Read(reader, path);
    }

    /// <summary>The trial as one line of the log, without a line break.</summary>
    /// <param name="trial">The trial.</param>
    public static string ToLine(Trial trial) => TrialJson.Write(trial);

    /// <summary>
    /// Appends one trial in a single write with the file locked; nothing that stands in the file is rewritten. An
    /// existing log is read first,
    /// so that a line never lands behind something that is no log.
    /// </summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="trial">The trial.</param>
    /// <returns>The number of trials in the log after it.</returns>
    /// <exception cref="InputException">The file is no log, or its directory does not exist.</exception>
    /// <exception cref="IOException">The file cannot be written, or is locked by another writer.</exception>
    public static int Append(string path, Trial trial)
    {
        string full = Path.GetFullPath(path);
        if (!Directory.Exists(Path.GetDirectoryName(full)))
            throw new InputException(
                $"Cannot write {path}: its directory does not exist. Make it first, or name another place."
            );
        if (Directory.Exists(full))
            throw new InputException($"Cannot write {path}: it is a directory. Name a file.");
        using var stream = new FileStream(full, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        int before;
        using (
            var reader = new StreamReader(
                stream,
                Utf8,
                detectEncodingFromByteOrderMarks: false,
                bufferSize: 1 << 12,
                leaveOpen: true
            )
        )
            before = Read(reader, path).Count;
        bool ended = stream.Length == 0 || LastByte(stream) == '\n';
        byte[] line = Utf8.GetBytes((ended ? "" : "\n") + ToLine(trial) + "\n");
        stream.Seek(0, SeekOrigin.End);
        stream.Write(line);
        stream.Flush(flushToDisk: true);
        return before + 1;
    }

    private static int LastByte(FileStream stream)
    {
        stream.Seek(-1, SeekOrigin.End);
        return stream.ReadByte();
    }
}
