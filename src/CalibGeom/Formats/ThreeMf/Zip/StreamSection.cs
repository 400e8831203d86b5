namespace CalibGeom.Formats.ThreeMf.Zip;

/// <summary>A stretch of a stream, to be read once from front to back.</summary>
internal sealed class StreamSection(Stream stream, long start, long length) : ReadOnlyStream
{
    private long done;

    public override int Read(Span<byte> buffer)
    {
        if (buffer.Length > length - done)
            buffer = buffer[..(int)(length - done)];
        if (buffer.Length == 0)
            return 0;
        stream.Position = start + done;
        int got = stream.Read(buffer);
        done += got;
        return got;
    }
}
