using System.IO.Hashing;

namespace CalibGeom.Formats.ThreeMf.Zip;

/// <summary>Passes bytes on, and counts and checksums them.</summary>
internal sealed class CountedStream(Stream target) : Stream
{
    private readonly Crc32 crc = new();

    internal long Count { get; private set; }

    internal uint Crc => crc.GetCurrentHashAsUInt32();

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => Count;

    public override long Position
    {
        get => Count;
        set => throw new NotSupportedException();
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        crc.Append(buffer);
        Count += buffer.Length;
        target.Write(buffer);
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush() => target.Flush();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
