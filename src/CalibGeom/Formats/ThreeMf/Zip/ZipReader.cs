using System.Buffers.Binary;
using System.IO.Compression;

namespace CalibGeom.Formats.ThreeMf.Zip;

/// <summary>
/// The parts of a zip by name (ASCII case does not count). Our own, since System.IO.Compression checks no checksum, has
/// no limit of inflation and writes the platform it ran on into a file; its inflater is used. Nothing is ever written
/// to disk. A part is held to its declared length, its checksum, a largest size and a largest inflation ratio while it
/// is read, so that a bomb ends in an error after a few megabytes.
/// </summary>
internal sealed class ZipReader
{
    private const uint LocalSignature = 0x04034b50;
    private const int LocalLength = 30,
        Stored = 0,
        Deflated = 8,
        Encrypted = 1;

    private readonly Stream stream;
    private readonly long origin;
    private readonly Faults faults;
    private readonly Dictionary<string, ZipEntry> entries = new(StringComparer.OrdinalIgnoreCase);

    internal ZipReader(Stream stream, Faults faults)
    {
        (this.stream, this.faults, origin) = (stream, faults, stream.Position);
        foreach (ZipEntry entry in ZipDirectory.Read(stream, origin, faults))
        {
            if (entry.Name.EndsWith('/'))
                continue;
            if (!IsPartName(entry.Name))
                faults.Raise(
                    $"\"{entry.Name}\" is no name of a part: no segment may be empty or begin with a period, "
                        + $"and no backslash or colon is allowed",
                    "parts with a name that is not allowed"
                );
            else if (!entries.TryAdd(entry.Name, entry))
                faults.Raise($"part \"{entry.Name}\" is there twice", "parts with a name that was used before");
        }
    }

    internal bool Contains(string name) => entries.ContainsKey(name);

    /// <summary>
    /// Opens a part; the stream throws an <see cref="InputException"/> where the part turns out damaged.
    /// </summary>
    internal Stream Open(string name)
    {
        ZipEntry entry = entries[name];
        if ((entry.Flags & Encrypted) != 0)
            throw faults.Fatal($"part \"{name}\" is encrypted", "Save it without a password.");
        if (entry.Method is not (Stored or Deflated))
            throw faults.Fatal(
                $"part \"{name}\" is compressed by method {entry.Method}; 3MF allows 0 (stored) and 8 (deflate)"
            );
        var local = new byte[LocalLength];
        RequireRange(entry, entry.HeaderOffset, LocalLength);
        ZipDirectory.ReadAt(stream, origin + entry.HeaderOffset, local, faults);
        if (BinaryPrimitives.ReadUInt32LittleEndian(local) != LocalSignature)
            throw faults.Fatal(
                $"part \"{name}\" does not begin at byte {entry.HeaderOffset} as the zip directory says"
            );
        long data =
            entry.HeaderOffset
            + LocalLength
            + BinaryPrimitives.ReadUInt16LittleEndian(local.AsSpan(26))
            + BinaryPrimitives.ReadUInt16LittleEndian(local.AsSpan(28));
        RequireRange(entry, data, entry.Compressed);
        Stream raw = new StreamSection(stream, origin + data, entry.Compressed);
        return new PartStream(
            entry.Method == Stored ? raw : new DeflateStream(raw, CompressionMode.Decompress),
            entry,
            faults
        );
    }

    private void RequireRange(ZipEntry entry, long offset, long length)
    {
        if (offset < 0 || length < 0 || offset > stream.Length - origin - length)
            throw faults.Fatal(
                $"part \"{entry.Name}\" lies beyond the end, at byte {offset}; the file is truncated or its "
                    + $"directory is wrong"
            );
    }

    private static bool IsPartName(string name) =>
        name.AsSpan().IndexOfAny("\\:\0") < 0
        && name.Split('/')
            .All(s => s.Length > 0 && (s[0] != '.' || s.Equals(".rels", StringComparison.OrdinalIgnoreCase)));
}
