namespace CalibGeom.Features.Files;

/// <summary>
/// A stream to write to that writes no further once the work is to stop, so that any writer ends at its next write.
/// What was written by then stands in the stream below, which stays open. Not safe to share between threads.
/// </summary>
/// <param name="inner">Where to.</param>
/// <param name="cancellation">Stops the writing with <see cref="OperationCanceledException"/>.</param>
public sealed class StoppingStream(Stream inner, CancellationToken cancellation) : Stream
{
    private readonly Stream inner = inner ?? throw new ArgumentNullException(nameof(inner));

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => inner.Length;

    /// <inheritdoc/>
    public override long Position
    {
        get => inner.Position;
        set => throw new NotSupportedException("This stream is written front to back.");
    }

    /// <inheritdoc/>
    public override void Flush() => inner.Flush();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        cancellation.ThrowIfCancellationRequested();
        inner.Write(buffer);
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException("This stream is only written.");

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) =>
        throw new NotSupportedException("This stream is written front to back.");

    /// <inheritdoc/>
    public override void SetLength(long value) =>
        throw new NotSupportedException("This stream is written front to back.");
}
