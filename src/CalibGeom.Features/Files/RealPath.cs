namespace CalibGeom.Features.Files;

/// <summary>
/// Where a path leads once every link on the way is followed, so that two names of one file compare equal.
/// </summary>
public static class RealPath
{
    private const int MostLinks = 40,
        NoSuchDevice = 6,
        NotSupported = 102;

    /// <summary>The full path without links; a last part that does not exist yet stays as it is named.</summary>
    /// <param name="path">Any path.</param>
    /// <exception cref="InputException">Links lead in a circle.</exception>
    public static string Of(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        string full = Path.GetFullPath(path);
        for (int followed = 0; followed <= MostLinks; followed++)
        {
            string? next = WithoutFirstLink(full);
            if (next is null)
                return full;
            full = next;
        }
        throw new InputException(InputIds.File, $"{path}: its links lead in a circle. Name the file itself.");
    }

    /// <summary>Whether two paths name the same file.</summary>
    /// <param name="a">A path.</param>
    /// <param name="b">Another.</param>
    public static bool Same(string a, string b) => string.Equals(Of(a), Of(b), StringComparison.Ordinal);

    /// <summary>
    /// Whether a path names, itself or through links, a device or an open descriptor: written to, never replaced by a
    /// file and never read to see what stands there.
    /// </summary>
    /// <param name="path">Any path.</param>
    /// <exception cref="InputException">Links lead in a circle.</exception>
    public static bool IsDevice(string path)
    {
        string full = Path.GetFullPath(path);
        return !OperatingSystem.IsWindows() && (IsUnderDevices(full) || IsUnderDevices(Of(full)));
    }

    /// <summary>
    /// Whether a path names a pipe or socket, which cannot be replaced by a file; false for whatever is no file at all.
    /// </summary>
    /// <param name="path">Any path.</param>
    public static bool IsPipe(string path)
    {
        if (OperatingSystem.IsWindows() || !File.Exists(path) || new FileInfo(Of(path)).Length > 0)
            return false;
        try
        {
            // To read and to write, because either alone waits for somebody at the other end.
            using var stream = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, 0);
            return !stream.CanSeek;
        }
        catch (IOException e)
        {
            return e.HResult is NoSuchDevice or NotSupported; // What opening a socket ends in; else it is in use.
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static bool IsUnderDevices(string full) =>
        full.StartsWith("/proc/", StringComparison.Ordinal)
        || full.StartsWith("/dev/", StringComparison.Ordinal)
            && !full.StartsWith("/dev/shm/", StringComparison.Ordinal);

    /// <summary>The path with its first link replaced by what it points to, or null when there is none.</summary>
    private static string? WithoutFirstLink(string full)
    {
        string root = Path.GetPathRoot(full)!,
            walked = root;
        string[] parts = full[root.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < parts.Length; i++)
        {
            string place = Path.Combine(walked, parts[i]);
            if (new FileInfo(place).LinkTarget is { } target)
                return Path.GetFullPath(Path.Combine([walked, target, .. parts[(i + 1)..]]));
            walked = place;
        }
        return null;
    }
}
