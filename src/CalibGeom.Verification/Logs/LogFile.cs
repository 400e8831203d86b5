using System.Text;

namespace CalibGeom.Verification.Logs;

/// <summary>A log on disk: read whole, appended to under a lock.</summary>
internal static class LogFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10),
        Pause = TimeSpan.FromMilliseconds(20);

    internal static TrialLog Read(string path)
    {
        RequireExisting(path);
        using FileStream stream = Open(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return TrialLog.Read(stream, path);
    }

    /// <exception cref="InputException">There is no such file.</exception>
    internal static void RequireExisting(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (!File.Exists(path))
            throw new InputException($"There is no log {path}. Add the readings of a print to it to begin one.");
    }

    /// <summary>Appends the line that is made from the log as it stands.</summary>
    internal static void Append(string path, Func<TrialLog, string> make)
    {
        RequirePlace(path);
        if (!File.Exists(path))
            make(TrialLog.Empty); // What it throws must not leave an empty file behind.
        using FileStream stream = Open(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        string line = make(TrialLog.Read(stream, path));
        bool ended = stream.Length == 0 || LastByte(stream) == '\n';
        Write(stream, Utf8.GetBytes((ended ? "" : "\n") + line + "\n"), () => stream.Flush(flushToDisk: true));
    }

    /// <summary>
    /// Appends bytes and brings them to the disk, or leaves the stream as long as it was: a full disk must not leave
    /// half a line behind.
    /// </summary>
    internal static void Write(Stream stream, byte[] bytes, Action flush)
    {
        long before = stream.Length;
        try
        {
            stream.Seek(before, SeekOrigin.Begin);
            stream.Write(bytes);
            flush();
        }
        catch
        {
            stream.SetLength(before);
            throw;
        }
    }

    private static void RequirePlace(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        string full = Path.GetFullPath(path);
        if (!Directory.Exists(Path.GetDirectoryName(full)))
            throw new InputException(
                $"Cannot write {path}: its directory does not exist. Make it first, or name another place."
            );
        if (Directory.Exists(full))
            throw new InputException($"Cannot write {path}: it is a directory. Name a file.");
    }

    /// <summary>Waits while another process writes.</summary>
    private static FileStream Open(string path, FileMode mode, FileAccess access, FileShare share)
    {
        DateTime end = DateTime.UtcNow + Patience;
        while (true)
        {
            try
            {
                return new FileStream(path, mode, access, share);
            }
            catch (IOException e) when (e is not (FileNotFoundException or DirectoryNotFoundException))
            {
                if (DateTime.UtcNow >= end)
                    throw new InputException(
                        $"{path} has been in use by another program for {Patience.TotalSeconds:0} s. Close it there.",
                        e
                    );
                Thread.Sleep(Pause);
            }
        }
    }

    private static int LastByte(FileStream stream)
    {
        stream.Seek(-1, SeekOrigin.End);
        return stream.ReadByte();
    }
}
