namespace CalibGeom.Features.Files;

/// <summary>
/// The temporary files of this process, so that a signal that ends it can take them away. Safe to share between
/// threads.
/// </summary>
public static class UnfinishedFiles
{
    private static readonly HashSet<string> Paths = new(StringComparer.Ordinal);
    private static readonly Lock Gate = new();

    /// <summary>
    /// Removes what is not finished, after a set of outputs that is being moved into place has arrived there. To be
    /// called when the process is about to end.
    /// </summary>
    public static void Remove()
    {
        lock (Gate)
        {
            foreach (string path in Paths)
                TryDelete(path);
            Paths.Clear();
        }
    }

    internal static void Add(string path)
    {
        lock (Gate)
            Paths.Add(path);
    }

    /// <summary>Deletes a file that may be gone already.</summary>
    internal static void Delete(string path)
    {
        lock (Gate)
            Paths.Remove(path);
        File.Delete(path);
    }

    /// <summary>Moves that belong together: a signal waits until they are through.</summary>
    internal static void Together(Action moves)
    {
        lock (Gate)
            moves();
    }

    private static void TryDelete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The process ends all the same.
        }
    }
}
