namespace CalibGeom.Tests.Shared;

/// <summary>A stream as a web server hands it out: what is not asynchronous throws, nothing can be sought.</summary>
internal sealed class AsyncOnlyStream(byte[]? content = null) : Stream
{
    private readonly MemoryStream inner = content is null ? new MemoryStream() : new MemoryStream(content);

    internal byte[] Written => inner.ToArray();

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
        inner.ReadAsync(buffer[..Math.Min(buffer.Length, 1000)], cancellationToken);

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default) =>
        inner.WriteAsync(buffer, cancellationToken);

    public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        inner.WriteAsync(buffer, offset, count, cancellationToken);

    public override Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public override int Read(byte[] buffer, int offset, int count) => throw Synchronous();

    public override void Write(byte[] buffer, int offset, int count) => throw Synchronous();

    public override void Flush() => throw Synchronous();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private static InvalidOperationException Synchronous() => new("Synchronous operations are disallowed.");
}
