using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace CalibGeom.Formats.ThreeMf.Zip;

/// <summary>
/// Writes a plain zip from front to back: parts in the order given, deflated, dated 1980-01-01, without anything of the
/// machine in it.
/// </summary>
internal sealed class ZipWriter(Stream stream)
{
    private const uint LocalSignature = 0x04034b50,
        EntrySignature = 0x02014b50,
        EndSignature = 0x06054b50;
    private const ushort Version = 20,
        Deflated = 8,
        FirstDay = 0x21;

    private readonly MemoryStream directory = new();
    private long written;
    private ushort parts;

    internal void Add(string name, Action<Stream> write)
    {
        using var packed = new MemoryStream();
        (uint crc, long length) = Pack(packed, write);
        if (packed.Length > uint.MaxValue || length > uint.MaxValue || written > uint.MaxValue)
            throw new InputException(
                InputIds.Mesh,
                $"Part {name} is too large for a plain zip (4 GB). Split the meshes."
            );
        long offset = written;
        byte[] encoded = Encoding.ASCII.GetBytes(name);
        Span<byte> common = stackalloc byte[26];
        Common(common, crc, (uint)packed.Length, (uint)length, (ushort)encoded.Length);
        Put(LocalSignature, common, encoded);
        packed.Position = 0;
        packed.CopyTo(stream);
        written += packed.Length;
        DirectoryEntry(common, encoded, (uint)offset);
    }

    internal void Finish()
    {
        Span<byte> end = stackalloc byte[22];
        end.Clear();
        BinaryPrimitives.WriteUInt32LittleEndian(end, EndSignature);
        BinaryPrimitives.WriteUInt16LittleEndian(end[8..], parts);
        BinaryPrimitives.WriteUInt16LittleEndian(end[10..], parts);
        BinaryPrimitives.WriteUInt32LittleEndian(end[12..], (uint)directory.Length);
        BinaryPrimitives.WriteUInt32LittleEndian(end[16..], (uint)written);
        directory.Position = 0;
        directory.CopyTo(stream);
        stream.Write(end);
    }

    private static (uint Crc, long Length) Pack(MemoryStream packed, Action<Stream> write)
    {
        using var deflate = new DeflateStream(packed, CompressionLevel.Optimal, leaveOpen: true);
        using var counted = new CountedStream(deflate);
        write(counted);
        return (counted.Crc, counted.Count);
    }

    private static void Common(Span<byte> fields, uint crc, uint packed, uint length, ushort nameLength)
    {
        fields.Clear();
        BinaryPrimitives.WriteUInt16LittleEndian(fields, Version);
        BinaryPrimitives.WriteUInt16LittleEndian(fields[4..], Deflated);
        BinaryPrimitives.WriteUInt16LittleEndian(fields[8..], FirstDay);
        BinaryPrimitives.WriteUInt32LittleEndian(fields[10..], crc);
        BinaryPrimitives.WriteUInt32LittleEndian(fields[14..], packed);
        BinaryPrimitives.WriteUInt32LittleEndian(fields[18..], length);
        BinaryPrimitives.WriteUInt16LittleEndian(fields[22..], nameLength);
    }

    private void DirectoryEntry(ReadOnlySpan<byte> common, byte[] name, uint offset)
    {
        Span<byte> entry = stackalloc byte[46];
        entry.Clear();
        BinaryPrimitives.WriteUInt32LittleEndian(entry, EntrySignature);
        BinaryPrimitives.WriteUInt16LittleEndian(entry[4..], Version);
        common.CopyTo(entry[6..]);
        BinaryPrimitives.WriteUInt32LittleEndian(entry[42..], offset);
        directory.Write(entry);
        directory.Write(name);
        parts++;
    }

    private void Put(uint signature, ReadOnlySpan<byte> common, byte[] name)
    {
        Span<byte> start = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(start, signature);
        stream.Write(start);
        stream.Write(common);
        stream.Write(name);
        written += start.Length + common.Length + name.Length;
    }
}
