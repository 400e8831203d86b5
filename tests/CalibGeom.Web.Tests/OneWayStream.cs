namespace CalibGeom.Web.Tests;

/// <summary>Bytes whose number nobody knows beforehand, a few thousand at a time, as a body in chunks.</summary>
internal sealed class OneWayStream(byte[] bytes) : Stream
{
    private int at;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int some = Math.Min(Math.Min(count, 5_000), bytes.Length - at);
        bytes.AsSpan(at, some).CopyTo(buffer.AsSpan(offset));
        at += some;
        return some;
    }

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
