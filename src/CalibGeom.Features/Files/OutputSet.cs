namespace CalibGeom.Features.Files;

/// <summary>
/// Files that belong together. Each is written beside its destination, down to the disk; <see cref="Commit"/> moves all
/// into place or, when one cannot be moved, puts back what stood there before. Disposing without a commit removes what
/// was written and leaves existing files untouched. The file added first is moved last: where a kill interrupts the
/// moves, the main file is still the old one. A destination that is a link stays one; what it points to is replaced. A
/// device is written to directly. Not safe to share between threads.
/// </summary>
public sealed class OutputSet : IDisposable
{
    private readonly List<PendingFile> files = [];
    private readonly Func<string, string?> refusal;
    private readonly Action<string, string> move;
    private readonly Action? committed;

    /// <summary>An empty set that may write over any file.</summary>
    public OutputSet()
        : this(_ => null) { }

    /// <summary>An empty set that writes over a file only when a rule allows it.</summary>
    /// <param name="refusal">Given a path, says in a sentence why what stands there may not be written over; null when
    /// it may, or nothing stands there.</param>
    /// <param name="committed">Told when all files have been moved into place; null, the default, tells nobody.</param>
    public OutputSet(Func<string, string?> refusal, Action? committed = null)
        : this(refusal, File.Move, committed) { }

    /// <summary>An empty set whose moves are made by somebody else, so that a test can let one fail.</summary>
    internal OutputSet(Action<string, string> move)
        : this(_ => null, move) { }

    private OutputSet(Func<string, string?> refusal, Action<string, string> move, Action? committed = null)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        (this.refusal, this.move, this.committed) = (refusal, move, committed);
    }

    /// <summary>Refuses, before any work is done, a file that may not be written over.</summary>
    /// <param name="path">The destination.</param>
    /// <exception cref="InputException">It may not.</exception>
    public void RequireFree(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (refusal(path) is { } reason)
            throw new InputException(InputIds.File, reason);
    }

    /// <summary>Writes one file beside its destination.</summary>
    /// <param name="path">The destination; its directory must exist.</param>
    /// <param name="write">Writes the whole content to the stream it is given; may seek in it unless the destination is
    /// a device.</param>
    /// <exception cref="InputException">The path is empty, its directory does not exist, it is a directory, a pipe
    /// or a device that is not there, has been added already, or may not be written over.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="UnauthorizedAccessException">The directory may not be written to.</exception>
    public void Add(string path, Action<Stream> write)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(write);
        string full = Checked(path);
        if (RealPath.IsDevice(full))
        {
            using var stream = new FileStream(full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
            if (stream.CanSeek)
                stream.Seek(0, SeekOrigin.End); // A file that is open already keeps what stands in it.
            write(stream);
            return;
        }
        string destination = RealPath.Of(full);
        if (files.Exists(f => f.Destination == destination))
            throw new InputException(InputIds.File, $"Cannot write {path} twice in one run. Name different files.");
        RequireFree(path);
        var file = PendingFile.Beside(destination);
        files.Add(file);
        file.Write(write);
    }

    /// <summary>Moves all files into place, replacing existing ones.</summary>
    /// <exception cref="IOException">A file could not be moved; all stand as before.</exception>
    /// <exception cref="UnauthorizedAccessException">A file may not be replaced; all stand as before.</exception>
    public void Commit()
    {
        UnfinishedFiles.Together(MoveAll);
        committed?.Invoke();
    }

    private void MoveAll()
    {
        var undo = new Stack<Action>();
        try
        {
            for (int i = files.Count - 1; i >= 0; i--)
                MoveIntoPlace(files[i], undo);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            while (undo.TryPop(out Action? step))
                step();
            throw;
        }
        foreach (PendingFile file in files)
        {
            File.Delete(file.SetAside);
            UnfinishedFiles.Delete(file.Temporary);
        }
        files.Clear();
    }

    /// <summary>Removes whatever was not committed.</summary>
    public void Dispose()
    {
        foreach (PendingFile file in files)
            UnfinishedFiles.Delete(file.Temporary);
        files.Clear();
    }

    private void MoveIntoPlace(PendingFile file, Stack<Action> undo)
    {
        if (File.Exists(file.Destination))
        {
            move(file.Destination, file.SetAside);
            undo.Push(() => File.Move(file.SetAside, file.Destination));
        }
        move(file.Temporary, file.Destination);
        undo.Push(() => File.Move(file.Destination, file.Temporary));
    }

    private static string Checked(string path)
    {
        if (string.IsNullOrWhiteSpace(path))
            throw new InputException(InputIds.File, "A file to write has an empty name. Name a file.");
        string full = Path.GetFullPath(path);
        string? directory = Path.GetDirectoryName(full);
        if (directory is null || !Directory.Exists(directory))
            throw new InputException(
                InputIds.File,
                $"Cannot write {path}: there is no directory {directory}. Make it first, or name another place."
            );
        if (Directory.Exists(full))
            throw new InputException(InputIds.File, $"Cannot write {path}: it is a directory. Name a file.");
        bool device = RealPath.IsDevice(full);
        if (device && !File.Exists(full))
            throw new InputException(
                InputIds.File,
                $"Cannot write {path}: there is no such device. Name a file in a directory of files."
            );
        if (!device && RealPath.IsPipe(full))
            throw new InputException(InputIds.File, $"Cannot write {path}: it is a pipe. Name a file.");
        return full;
    }
}
