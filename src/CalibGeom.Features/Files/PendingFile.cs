namespace CalibGeom.Features.Files;

/// <summary>A file that is written beside its destination and not yet moved into place.</summary>
/// <param name="Temporary">Where it is written.</param>
/// <param name="Destination">Where it shall stand.</param>
/// <param name="SetAside">Where the file that stands there now waits until all are in place.</param>
internal sealed record PendingFile(string Temporary, string Destination, string SetAside)
{
    /// <summary>A place for a new file in the directory of its destination.</summary>
    internal static PendingFile Beside(string destination)
    {
        string directory = Path.GetDirectoryName(destination)!,
            name = Path.GetFileName(destination);
        var id = Guid.NewGuid();
        return new PendingFile(
            Path.Combine(directory, $".{name}.{id:N}.tmp"),
            destination,
            Path.Combine(directory, $".{name}.{id:N}.old")
        );
    }

    /// <summary>Writes the content.</summary>
    /// <exception cref="IOException">It cannot be; said of the destination, the only name that anybody knows.</exception>
    internal void Write(Action<Stream> write)
    {
        try
        {
            WriteBeside(write);
        }
        catch (IOException e) when (e.Message.Contains(Temporary, StringComparison.Ordinal))
        {
            string said = e.Message.Replace(Temporary, Destination, StringComparison.Ordinal).TrimEnd('.');
            throw new IOException($"{said}. Make room, or name another place; nothing there is changed.", e);
        }
    }

    /// <summary>Writes the content, all the way to the disk, with the mode of the file that it will replace.</summary>
    private void WriteBeside(Action<Stream> write)
    {
        UnfinishedFiles.Add(Temporary);
        var file = new FileStream(Temporary, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16);
        using var stream = new FileToWrite(file);
        write(stream);
        stream.Flush(toDisk: true);
        if (!OperatingSystem.IsWindows() && File.Exists(Destination))
            File.SetUnixFileMode(file.SafeFileHandle, File.GetUnixFileMode(Destination));
    }
}
