using CalibGeom.Formats.ThreeMf.Zip;

namespace CalibGeom.Formats;

/// <summary>
/// A seekable stream that tells which share of its bytes was read, and reads no further once the work is to stop; what
/// is read twice counts twice, up to the whole.
/// </summary>
internal sealed class WatchedStream(Stream inner, IProgress<double>? progress, CancellationToken cancellation)
    : ReadOnlyStream
{
    private readonly double total = Math.Max(1, inner.Length - inner.Position);
    private long done;

    public override bool CanSeek => true;

    public override long Length => inner.Length;

    public override long Position
    {
        get => inner.Position;
        set => inner.Position = value;
    }

    public override int Read(Span<byte> buffer)
    {
        cancellation.ThrowIfCancellationRequested();
        int got = inner.Read(buffer);
        done += got;
        progress?.Report(Math.Min(1, done / total));
        return got;
    }

    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);
}
