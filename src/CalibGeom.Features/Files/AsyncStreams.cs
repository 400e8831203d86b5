namespace CalibGeom.Features.Files;

/// <summary>
/// Reading from and writing to streams that may only be used asynchronously, such as those of a web server: nothing of
/// it is synchronous on the stream. Readers and writers work on bytes in memory.
/// </summary>
public static class AsyncStreams
{
    /// <summary>Reads a stream to its end, or a little beyond a limit, and hands the bytes to a reader.</summary>
    /// <typeparam name="T">What is read.</typeparam>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="most">The reader's limit in bytes: of a longer stream it is handed more than these, so that it can
    /// say so.</param>
    /// <param name="read">The reader.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static async Task<T> ReadAsync<T>(
        Stream stream,
        long most,
        Func<Stream, T> read,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(read);
        using var bytes = new MemoryStream();
        var buffer = new byte[1 << 16];
        int count;
        while (bytes.Length <= most && (count = await stream.ReadAsync(buffer, cancellation).ConfigureAwait(false)) > 0)
            bytes.Write(buffer, 0, count);
        bytes.Position = 0;
        return read(bytes);
    }

    /// <summary>Lets a writer write, and writes its bytes to a stream.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="write">The writer.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static async Task WriteAsync(Stream stream, Action<Stream> write, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(write);
        cancellation.ThrowIfCancellationRequested();
        using var bytes = new MemoryStream();
        write(new StoppingStream(bytes, cancellation));
        bytes.Position = 0;
        await bytes.CopyToAsync(stream, cancellation).ConfigureAwait(false);
    }
}
