namespace CalibGeom.Features.Files;

/// <summary>
/// A file that is being written. The runtime tells a file that grows beyond what the system allows (a limit by
/// <c>ulimit -f</c>, or the disk's own) as a wrong argument; here it is a disk without room, like any other: an
/// <see cref="IOException"/>. Not safe to share between threads.
/// </summary>
/// <param name="inner">The file; disposed with this.</param>
public sealed class FileToWrite(FileStream inner) : Stream
{
    private readonly FileStream inner = inner ?? throw new ArgumentNullException(nameof(inner));

    /// <inheritdoc/>
    public override bool CanRead => inner.CanRead;

    /// <inheritdoc/>
    public override bool CanSeek => inner.CanSeek;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => inner.Length;

    /// <inheritdoc/>
    public override long Position
    {
        get => inner.Position;
        set => Seek(value, SeekOrigin.Begin);
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, count);

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer) => inner.Read(buffer);

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        try
        {
            inner.Write(buffer);
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw TooLarge(inner.Name, e);
        }
    }

    /// <inheritdoc/>
    public override void WriteByte(byte value) => Write([value]);

    /// <inheritdoc/>
    public override void Flush() => Flush(toDisk: false);

    /// <summary>Hands all on, to the disk itself where that is asked for.</summary>
    internal void Flush(bool toDisk) => Try(() => inner.Flush(toDisk));

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin)
    {
        long position = 0;
        Try(() => position = inner.Seek(offset, origin));
        return position;
    }

    /// <inheritdoc/>
    public override void SetLength(long value) => Try(() => inner.SetLength(value));

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
            Try(inner.Dispose);
        base.Dispose(disposing);
    }

    private void Try(Action work)
    {
        try
        {
            work();
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw TooLarge(inner.Name, e);
        }
    }

    /// <summary>What to throw for a file that may not grow on.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="inside">What the runtime threw, or null.</param>
    public static IOException TooLarge(string name, Exception? inside) =>
        new($"{name} grows larger than a limit set for files (ulimit -f) or the disk allows.", inside);
}
