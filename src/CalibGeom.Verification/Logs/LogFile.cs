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
        if (!File.Exists(path))
            throw new InputException(
                InputIds.Log,
                $"There is no log {path}. Add the readings of a print to it to begin one."
            );
    }

    /// <summary>Appends the line that is made from the log as it stands.</summary>
    internal static void Append(string path, Func<TrialLog, string> make) =>
        AppendedFile.Append(path, stream => make(TrialLog.Read(stream, path)) + "\n");
}
