using System.Text;

namespace CalibGeom.Features.Files;

/// <summary>
/// A text file that is only ever appended to, by several processes at once: what is added is made from the file as it
/// stands while a lock is held, and nothing that stands in it is rewritten.
/// </summary>
public static class AppendedFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10),
        Pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Appends text in a single write, brought to the disk; waits while another process writes.</summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="make">The text to add, made from all bytes of the file as it stands; what it throws leaves the file
    /// as it was. Called twice where the file does not exist yet.</param>
    /// <exception cref="InputException">Its directory does not exist, it is a directory, a device or a pipe, or others
    /// keep it locked for ten seconds.</exception>
    /// <exception cref="IOException">It cannot be written; it stands as before.</exception>
    public static void Append(string path, Func<Stream, string> make)
    {
        ArgumentNullException.ThrowIfNull(make);
        RequirePlace(path);
        if (!File.Exists(path))
            make(Stream.Null); // What it throws must not leave an empty file behind.
        using var stream = new FileToWrite(Open(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        string more = make(stream);
        Write(stream, Utf8.GetBytes((Ended(stream) ? "" : "\n") + more), () => stream.Flush(toDisk: true));
    }

    /// <summary>
    /// Appends text as <see cref="Append"/> does, with asynchronous reads and writes of the file and a wait for others
    /// that holds no thread. Only bringing the bytes to the disk itself has no asynchronous way: a thread of the pool
    /// does it.
    /// </summary>
    /// <param name="path">The file; made when it does not exist.</param>
    /// <param name="make">As for <see cref="Append"/>; it reads from memory.</param>
    /// <param name="cancellation">Stops the work until the text is written, which is then done whole; a file that is new
    /// is made without a stop.</param>
    /// <exception cref="InputException">As for <see cref="Append"/>.</exception>
    /// <exception cref="IOException">It cannot be written; it stands as before.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped; it stands as before.</exception>
    public static async Task AppendAsync(
        string path,
        Func<Stream, string> make,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(make);
        cancellation.ThrowIfCancellationRequested();
        RequirePlace(path);
        if (!File.Exists(path))
        {
            make(Stream.Null); // Neither what it throws nor a stop may leave an empty file behind.
            cancellation = CancellationToken.None;
        }
        FileStream file = await OpenAsync(path, cancellation).ConfigureAwait(false);
        await using var closing = file.ConfigureAwait(false);
        bool ended = true;
        string more = await AsyncStreams
            .ReadAsync(
                file,
                ReaderLimits.PipedBytes,
                bytes =>
                {
                    ended = Ended(bytes);
                    bytes.Position = 0;
                    return make(bytes);
                },
                cancellation
            )
            .ConfigureAwait(false);
        await WriteAsync(file, Utf8.GetBytes((ended ? "" : "\n") + more)).ConfigureAwait(false);
    }

    private static async Task WriteAsync(FileStream file, byte[] bytes)
    {
        long before = file.Length;
        try
        {
            file.Seek(before, SeekOrigin.Begin);
            await file.WriteAsync(bytes).ConfigureAwait(false);
            await Task.Run(() => file.Flush(flushToDisk: true)).ConfigureAwait(false);
        }
        catch (Exception e)
        {
            file.SetLength(before);
            // The runtime tells a file that may grow no further as a wrong argument.
            if (e is ArgumentOutOfRangeException)
                throw FileToWrite.TooLarge(file.Name, e);
            throw;
        }
    }

    private static async Task<FileStream> OpenAsync(string path, CancellationToken cancellation)
    {
        DateTime end = DateTime.UtcNow + Patience;
        while (true)
        {
            FileMode mode = FileMode.OpenOrCreate;
            if (TryOpen(path, mode, FileAccess.ReadWrite, FileShare.None, FileOptions.Asynchronous, end) is { } file)
                return file;
            await Task.Delay(Pause, cancellation).ConfigureAwait(false);
        }
    }

    private static InputException InUse(string path, IOException cause) =>
        new(
            InputIds.File,
            $"{path} has been in use by another program for {Patience.TotalSeconds:0} s. Close it there.",
            cause
        );

    /// <summary>Opens a file to read it; waits while another process writes.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">Others keep it locked for ten seconds.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static FileStream OpenToRead(string path) => Open(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);

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
                InputIds.File,
                $"Cannot write {path}: its directory does not exist. Make it first, or name another place."
            );
        if (Directory.Exists(full))
            throw new InputException(InputIds.File, $"Cannot write {path}: it is a directory. Name a file.");
        if (RealPath.IsDevice(full) || RealPath.IsPipe(full))
            throw new InputException(InputIds.File, $"Cannot write {path}: it is a device or a pipe. Name a file.");
    }

    private static FileStream Open(string path, FileMode mode, FileAccess access, FileShare share)
    {
        DateTime end = DateTime.UtcNow + Patience;
        while (true)
        {
            if (TryOpen(path, mode, access, share, FileOptions.None, end) is { } file)
                return file;
            Thread.Sleep(Pause);
        }
    }

    /// <summary>The file; null while others keep it locked and it may still be waited for.</summary>
    private static FileStream? TryOpen(
        string path,
        FileMode mode,
        FileAccess access,
        FileShare share,
        FileOptions options,
        DateTime end
    )
    {
        try
        {
            // Without a buffer: one that did not reach a full disk would be written again before the file is cut back,
            // and keep it from being so.
            return new FileStream(path, mode, access, share, bufferSize: 0, options);
        }
        catch (IOException e) when (e is not (FileNotFoundException or DirectoryNotFoundException))
        {
            return DateTime.UtcNow >= end ? throw InUse(path, e) : null;
        }
    }

    private static bool Ended(Stream stream)
    {
        if (stream.Length == 0)
            return true;
        stream.Seek(-1, SeekOrigin.End);
        return stream.ReadByte() == '\n';
    }
}
