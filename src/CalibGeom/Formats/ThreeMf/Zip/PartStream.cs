using System.IO.Hashing;
using CalibGeom.Features.Files;

namespace CalibGeom.Formats.ThreeMf.Zip;

/// <summary>
/// An inflated part, held to its declared length and checksum and to the limits on size and inflation while it is read.
/// </summary>
internal sealed class PartStream(Stream inflated, ZipEntry entry, Faults faults) : ReadOnlyStream
{
    internal const long LargestPart = ReaderLimits.PackagePartBytes;
    internal const long FreeInflation = 4L << 20;
    internal const int LargestRatio = ReaderLimits.PackageRatio;

    private readonly Crc32 crc = new();
    private long done;
    private bool verified;

    public override int Read(Span<byte> buffer)
    {
        if (buffer.Length == 0)
            return 0;
        int got = Inflate(buffer);
        crc.Append(buffer[..got]);
        done += got;
        if (done > LargestPart)
            throw faults.Fatal($"part \"{entry.Name}\" is larger than {LargestPart >> 20} MB");
        if (done > FreeInflation && done > LargestRatio * entry.Compressed)
            throw faults.Fatal(
                $"part \"{entry.Name}\" inflates to more than {LargestRatio} times its {entry.Compressed} "
                    + $"bytes: a zip bomb"
            );
        if (got == 0 && !verified)
            Verify();
        return got;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            inflated.Dispose();
        base.Dispose(disposing);
    }

    private int Inflate(Span<byte> buffer)
    {
        try
        {
            return inflated.Read(buffer);
        }
        catch (InvalidDataException e)
        {
            throw faults.Fatal(
                $"part \"{entry.Name}\" cannot be inflated after {done} bytes; the file is damaged",
                cause: e
            );
        }
    }

    private void Verify()
    {
        verified = true;
        if (done != entry.Length)
            faults.Raise(
                $"part \"{entry.Name}\" has {done} bytes where the zip directory says {entry.Length}",
                "wrong part lengths"
            );
        else if (crc.GetCurrentHashAsUInt32() != entry.Crc)
            faults.Raise(
                $"part \"{entry.Name}\" does not match its checksum; bytes in it have changed",
                "wrong checksums"
            );
    }
}
