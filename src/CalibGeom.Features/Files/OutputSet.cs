namespace CalibGeom.Features.Files;

/// <summary>
/// Files that are written beside their destinations and moved into place together by <see cref="Commit"/>; disposing
/// without a commit
/// removes what was written and leaves existing files untouched. Not safe to share between threads.
/// </summary>
public sealed class OutputSet : IDisposable
{
    private readonly List<(string Temporary, string Destination)> files = [];

    /// <summary>Writes one file beside its destination.</summary>
    /// <param name="path">The destination; its directory must exist.</param>
    /// <param name="write">Writes the whole content to the stream it is given, and may seek in it.</param>
    /// <exception cref="InputException">The directory does not exist, the path is a directory or has been added
    /// already.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="UnauthorizedAccessException">The directory may not be written to.</exception>
    public void Add(string path, Action<Stream> write)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(write);
        string destination = Path.GetFullPath(path);
        string? directory = Path.GetDirectoryName(destination);
        if (directory is null || !Directory.Exists(directory))
            throw new InputException(
                $"Cannot write {path}: there is no directory {directory}. Make it first, or name another place."
            );
        if (Directory.Exists(destination))
            throw new InputException($"Cannot write {path}: it is a directory. Name a file.");
        if (files.Exists(f => f.Destination == destination))
            throw new InputException($"Cannot write {path} twice in one run. Name different files.");
        string temporary = Path.Combine(directory, $".{Path.GetFileName(destination)}.{Guid.NewGuid():N}.tmp");
        files.Add((temporary, destination));
        using var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16);
        write(stream);
    }

    /// <summary>Moves all files into place, replacing existing ones.</summary>
    /// <exception cref="IOException">A file could not be moved.</exception>
    public void Commit()
    {
        foreach ((string temporary, string destination) in files)
            File.Move(temporary, destination, overwrite: true);
        files.Clear();
    }

    /// <summary>Removes whatever was not committed.</summary>
    public void Dispose()
    {
        foreach ((string temporary, _) in files)
            File.Delete(temporary);
        files.Clear();
    }
}
