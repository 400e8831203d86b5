using CalibGeom.Features.Files;

namespace CalibGeom.Verification.Logs;

/// <summary>
/// The log of one machine and resin: JSON Lines in UTF-8, one trial a line in the order of printing, only ever appended
/// to. A trial is taken back by a later line that names its number. A line that was cut off while it was written is
/// left out and said; nothing else is lost with it. Immutable.
/// </summary>
public sealed class TrialLog
{
    private TrialLog(IReadOnlyList<LogEntry> entries, IReadOnlyList<Finding> findings)
    {
        (Entries, Findings) = (entries, findings);
        Trials = entries.Where(e => !e.TakenBack).Select(e => e.Trial).ToArray();
    }

    /// <summary>A log without a line.</summary>
    public static TrialLog Empty { get; } = new([], []);

    /// <summary>All trials with their numbers, those that were taken back too.</summary>
    public IReadOnlyList<LogEntry> Entries { get; }

    /// <summary>The trials that hold, in the order of the file.</summary>
    public IReadOnlyList<Trial> Trials { get; }

    /// <summary>What is odd about the file: a line that was cut off.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Reads a log.</summary>
    /// <param name="stream">The log in UTF-8; left open.</param>
    /// <param name="name">The log's name for messages.</param>
    /// <exception cref="InputException">A line is no trial or no UTF-8, or there are too many or too long ones; the
    /// message names the file, the line, the path and the limit.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    public static TrialLog Read(Stream stream, string name = "log")
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(name);
        using var lines = new LogLines(stream, name);
        return Read(lines);
    }

    /// <summary>
    /// Reads a log from a stream that is only ever read asynchronously, such as the body of a web request: first into a
    /// temporary file, then from there.
    /// </summary>
    /// <param name="stream">The log in UTF-8; left open.</param>
    /// <param name="name">The log's name for messages.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">As for <see cref="Read(Stream, string)"/>.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static async Task<TrialLog> ReadAsync(
        Stream stream,
        string name = "log",
        CancellationToken cancellation = default
    )
    {
        using TemporaryCopy copy = await TemporaryCopy
            .OfAsync(stream, name, cancellation: cancellation)
            .ConfigureAwait(false);
        using FileStream file = File.OpenRead(copy.Path);
        return Read(file, name);
    }

    private static TrialLog Read(LogLines lines)
    {
        var entries = new List<LogEntry>();
        var findings = new List<Finding>();
        while (lines.Next() is { } text)
        {
            if (string.IsNullOrWhiteSpace(text))
                continue;
            string where = lines.Where;
            LogLine line = LogLine.Parse(text, where);
            if (line.Trial is { } trial)
                entries.Add(new LogEntry(entries.Count + 1, trial, TakenBack: false));
            else if (line.Undo is { } undo)
                TakeBack(entries, undo, where);
            else
                findings.Add(Torn(where));
        }
        return new TrialLog(entries, findings);
    }

    /// <summary>Reads a log file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">The file does not exist or a line is no trial.</exception>
    public static TrialLog Read(string path) => LogFile.Read(path);

    /// <summary>The trial as one line of the log, without a line break.</summary>
    /// <param name="trial">The trial.</param>
    public static string ToLine(Trial trial) => TrialJson.Write(trial);

    /// <summary>Appends one trial; see <see cref="Append(string, Func{TrialLog, Trial})"/>.</summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="trial">The trial.</param>
    /// <returns>The trial with its number.</returns>
    /// <exception cref="InputException">The file is no log, its directory does not exist, or others keep it locked for
    /// ten seconds.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static LogEntry Append(string path, Trial trial) => Append(path, _ => trial);

    /// <summary>
    /// Appends one trial in a single write with the file locked; nothing that stands in the file is rewritten. The
    /// existing log is read first, so that a line never lands behind something that is no log, and the trial is made
    /// from it while the lock is held: two processes that add at once both see what the other added.
    /// </summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="make">The trial to append to the log; what it throws leaves the file as it was.</param>
    /// <returns>The trial with its number.</returns>
    /// <exception cref="InputException">The file is no log, its directory does not exist, or others keep it locked for
    /// ten seconds.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static LogEntry Append(string path, Func<TrialLog, Trial> make)
    {
        ArgumentNullException.ThrowIfNull(make);
        LogEntry? added = null;
        LogFile.Append(path, log => ToLine((added = log.Next(make)).Trial));
        return added!;
    }

    /// <summary>
    /// Appends one trial as <see cref="Append(string, Func{TrialLog, Trial})"/> does, without a synchronous read or
    /// write of the file and without a thread that waits for the lock.
    /// </summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="make">The trial to append to the log; what it throws leaves the file as it was.</param>
    /// <param name="cancellation">Stops the work until the line is written, which is then done whole; the first line of
    /// a new file is written without a stop.</param>
    /// <returns>The trial with its number.</returns>
    /// <exception cref="InputException">The file is no log, its directory does not exist, or others keep it locked for
    /// ten seconds.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped; the file is as it was.</exception>
    public static async Task<LogEntry> AppendAsync(
        string path,
        Func<TrialLog, Trial> make,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(make);
        LogEntry? added = null;
        await LogFile
            .AppendAsync(path, log => ToLine((added = log.Next(make)).Trial), cancellation)
            .ConfigureAwait(false);
        return added!;
    }

    private LogEntry Next(Func<TrialLog, Trial> make) => new(Entries.Count + 1, make(this), TakenBack: false);

    /// <summary>Takes a trial back by appending a line that says so; nothing is rewritten.</summary>
    /// <param name="path">The file.</param>
    /// <param name="date">The day it is taken back.</param>
    /// <param name="number">The trial's number; null for the last that holds.</param>
    /// <returns>The trial that no longer holds.</returns>
    /// <exception cref="InputException">There is no such log or trial, or it has been taken back already.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static LogEntry Undo(string path, DateOnly date, int? number = null)
    {
        LogEntry? gone = null;
        LogFile.RequireExisting(path);
        LogFile.Append(
            path,
            log =>
            {
                gone = log.ToTakeBack(path, number);
                return RetractionJson.Write(gone.Number, date);
            }
        );
        return gone! with { TakenBack = true };
    }

    private LogEntry ToTakeBack(string path, int? number)
    {
        if (number is not { } wanted)
            return Entries.LastOrDefault(e => !e.TakenBack)
                ?? throw new InputException(InputIds.Log, $"{path} holds no trial to take back.");
        if (Entries.FirstOrDefault(e => e.Number == wanted) is not { } entry)
            throw new InputException(
                InputIds.Log,
                $"{path} holds no trial {wanted}; it has {Entries.Count}. Name one that it shows."
            );
        return entry.TakenBack
            ? throw new InputException(
                InputIds.Log,
                $"{path}: trial {wanted} has been taken back already. Nothing is left to do."
            )
            : entry;
    }

    private static void TakeBack(List<LogEntry> entries, int number, string where)
    {
        if (number > entries.Count)
            throw new InputException(
                InputIds.Log,
                $"{where}: this takes back trial {number}, but {entries.Count} stand before it. Mend the line."
            );
        entries[number - 1] = entries[number - 1] with { TakenBack = true };
    }

    private static Finding Torn(string where) =>
        new(
            "log-torn",
            Severity.Warning,
            where,
            "This line was cut off while it was written and is left out.",
            "Add the readings of that print again; the line may stay as it is."
        );
}
