namespace CalibGeom.Features.Files;

/// <summary>
/// A copy of what can be read once only, such as standard input: of a bounded size, readable by its owner alone, gone
/// when it is disposed. Not safe to share between threads.
/// </summary>
public sealed class TemporaryCopy : IDisposable
{
    private TemporaryCopy(string path) => Path = path;

    /// <summary>Where it is.</summary>
    public string Path { get; }

    /// <summary>Copies a stream to its end.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="name">What it is called in messages.</param>
    /// <param name="most">The most bytes.</param>
    /// <exception cref="InputException">There are more.</exception>
    /// <exception cref="IOException">There is no room for it.</exception>
    public static TemporaryCopy Of(Stream stream, string name, long most = ReaderLimits.PipedBytes)
    {
        ArgumentNullException.ThrowIfNull(stream);
        TemporaryCopy copy = New();
        try
        {
            using var file = new FileToWrite(Create(copy.Path));
            Fill(file, stream, name, most);
            return copy;
        }
        catch
        {
            copy.Dispose();
            throw;
        }
    }

    /// <summary>Copies a stream to its end, which is only ever read asynchronously.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="name">What it is called in messages.</param>
    /// <param name="most">The most bytes.</param>
    /// <param name="cancellation">Stops the copying.</param>
    /// <exception cref="InputException">There are more.</exception>
    /// <exception cref="IOException">There is no room for it.</exception>
    /// <exception cref="OperationCanceledException">The copying was stopped.</exception>
    public static async Task<TemporaryCopy> OfAsync(
        Stream stream,
        string name,
        long most = ReaderLimits.PipedBytes,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        TemporaryCopy copy = New();
        try
        {
            using var file = new FileToWrite(Create(copy.Path));
            var buffer = new byte[1 << 16];
            int read;
            while ((read = await stream.ReadAsync(buffer, cancellation).ConfigureAwait(false)) > 0)
                Add(file, buffer.AsSpan(0, read), name, most);
            return copy;
        }
        catch
        {
            copy.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => UnfinishedFiles.Delete(Path);

    private static FileStream Create(string path)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(path, options);
    }

    private static void Fill(FileToWrite file, Stream stream, string name, long most)
    {
        var buffer = new byte[1 << 16];
        int read;
        while ((read = stream.Read(buffer)) > 0)
            Add(file, buffer.AsSpan(0, read), name, most);
    }

    private static void Add(FileToWrite file, ReadOnlySpan<byte> bytes, string name, long most)
    {
        if (file.Length + bytes.Length > most)
            throw new InputException(
                InputIds.File,
                $"{name} is larger than {most >> 20} MiB, the limit for input that is piped in. Name a file."
            );
        file.Write(bytes);
    }

    private static TemporaryCopy New()
    {
        var copy = new TemporaryCopy(
            System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"calibgeom-{Guid.NewGuid():N}.tmp")
        );
        UnfinishedFiles.Add(copy.Path);
        return copy;
    }
}
