using CalibGeom.Features.Files;

namespace CalibGeom.Verification.Logs;

/// <summary>A log on disk: read whole, appended to under a lock.</summary>
internal static class LogFile
{
    internal static TrialLog Read(string path)
    {
        RequireExisting(path);
        using FileStream stream = AppendedFile.OpenToRead(path);
        return TrialLog.Read(stream, path);
    }

    /// <exception cref="InputException">There is no such file.</exception>
    internal static void RequireExisting(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (Directory.Exists(path))
            throw new InputException(InputIds.Log, $"{path}: this is a directory. Name the file of a log.");
        if (!File.Exists(path))
            throw new InputException(
                InputIds.Log,
                $"There is no log {path}. Add the readings of a print to it to begin one."
            );
    }

    /// <summary>Appends the line that is made from the log as it stands.</summary>
    internal static void Append(string path, Func<TrialLog, string> make) =>
        AppendedFile.Append(path, Line(path, make));

    /// <summary>The same without a synchronous read or write of the file.</summary>
    internal static Task AppendAsync(string path, Func<TrialLog, string> make, CancellationToken cancellation) =>
        AppendedFile.AppendAsync(path, Line(path, make), cancellation);

    private static Func<Stream, string> Line(string path, Func<TrialLog, string> make) =>
        stream => make(TrialLog.Read(stream, path)) + "\n";
}
