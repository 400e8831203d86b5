using System.Buffers.Binary;
using System.Text;

namespace CalibGeom.Formats.ThreeMf.Zip;

/// <summary>
/// The central directory of a zip, 64-bit extension included (layout after the zip application note).
/// </summary>
internal static class ZipDirectory
{
    private const uint EndSignature = 0x06054b50,
        End64Signature = 0x06064b50,
        Locator64Signature = 0x07064b50,
        EntrySignature = 0x02014b50;
    private const int EndLength = 22,
        Locator64Length = 20,
        EntryLength = 46,
        MostEntries = 10_000;

    internal static List<ZipEntry> Read(Stream stream, long origin, Faults faults)
    {
        long length = stream.Length - origin;
        var tail = new byte[Math.Min(length, EndLength + ushort.MaxValue + Locator64Length)];
        ReadAt(stream, origin + length - tail.Length, tail, faults);
        int end = FindEnd(tail);
        if (end < 0)
            throw faults.Fatal($"is a zip without its directory; it is truncated at byte {length}");
        (long count, long size, long offset) = Extent(stream, origin, tail, end, faults);
        if (count > MostEntries)
            throw faults.Fatal($"holds {count} parts; at most {MostEntries} are read");
        if (offset < 0 || size < 0 || offset > length || size > length - offset)
            throw faults.Fatal($"its zip directory lies beyond the end, at byte {offset}");
        var directory = new byte[size];
        ReadAt(stream, origin + offset, directory, faults);
        return Entries(directory, count, offset, faults);
    }

    internal static void ReadAt(Stream stream, long position, Span<byte> buffer, Faults faults)
    {
        stream.Position = position;
        if (stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false) < buffer.Length)
            throw faults.Fatal($"ends inside a zip structure at byte {position}");
    }

    private static int FindEnd(ReadOnlySpan<byte> tail)
    {
        for (int at = tail.Length - EndLength; at >= 0; at--)
            if (
                BinaryPrimitives.ReadUInt32LittleEndian(tail[at..]) == EndSignature
                && at + EndLength + BinaryPrimitives.ReadUInt16LittleEndian(tail[(at + 20)..]) == tail.Length
            )
                return at;
        return -1;
    }

    private static (long Count, long Size, long Offset) Extent(
        Stream stream,
        long origin,
        ReadOnlySpan<byte> tail,
        int end,
        Faults faults
    )
    {
        ReadOnlySpan<byte> record = tail[end..];
        long count = BinaryPrimitives.ReadUInt16LittleEndian(record[10..]);
        long size = BinaryPrimitives.ReadUInt32LittleEndian(record[12..]),
            offset = BinaryPrimitives.ReadUInt32LittleEndian(record[16..]);
        bool wide = count == ushort.MaxValue || size == uint.MaxValue || offset == uint.MaxValue;
        if (!wide || end < Locator64Length)
            return (count, size, offset);
        ReadOnlySpan<byte> locator = tail[(end - Locator64Length)..];
        if (BinaryPrimitives.ReadUInt32LittleEndian(locator) != Locator64Signature)
            return (count, size, offset);
        var wideEnd = new byte[56];
        long at = BinaryPrimitives.ReadInt64LittleEndian(locator[8..]);
        if (at < 0 || at > stream.Length - origin - wideEnd.Length)
            throw faults.Fatal($"its zip directory lies beyond the end, at byte {at}");
        ReadAt(stream, origin + at, wideEnd, faults);
        if (BinaryPrimitives.ReadUInt32LittleEndian(wideEnd) != End64Signature)
            throw faults.Fatal($"has no zip directory end at byte {at}");
        return (
            BinaryPrimitives.ReadInt64LittleEndian(wideEnd.AsSpan(32)),
            BinaryPrimitives.ReadInt64LittleEndian(wideEnd.AsSpan(40)),
            BinaryPrimitives.ReadInt64LittleEndian(wideEnd.AsSpan(48))
        );
    }

    private static List<ZipEntry> Entries(ReadOnlySpan<byte> directory, long count, long offset, Faults faults)
    {
        var entries = new List<ZipEntry>();
        int at = 0;
        for (long i = 0; i < count; i++)
        {
            if (
                directory.Length - at < EntryLength
                || BinaryPrimitives.ReadUInt32LittleEndian(directory[at..]) != EntrySignature
            )
                throw faults.Fatal($"its zip directory is broken at byte {offset + at}");
            ReadOnlySpan<byte> fixedPart = directory[at..];
            int name = BinaryPrimitives.ReadUInt16LittleEndian(fixedPart[28..]);
            int extra = BinaryPrimitives.ReadUInt16LittleEndian(fixedPart[30..]),
                comment = BinaryPrimitives.ReadUInt16LittleEndian(fixedPart[32..]);
            if (fixedPart.Length < EntryLength + name + extra + comment)
                throw faults.Fatal($"its zip directory ends early at byte {offset + at}");
            entries.Add(
                Entry(fixedPart, fixedPart.Slice(EntryLength, name), fixedPart.Slice(EntryLength + name, extra))
            );
            at += EntryLength + name + extra + comment;
        }
        return entries;
    }

    private static ZipEntry Entry(ReadOnlySpan<byte> record, ReadOnlySpan<byte> name, ReadOnlySpan<byte> extra)
    {
        long compressed = BinaryPrimitives.ReadUInt32LittleEndian(record[20..]),
            length = BinaryPrimitives.ReadUInt32LittleEndian(record[24..]);
        long header = BinaryPrimitives.ReadUInt32LittleEndian(record[42..]);
        ReadOnlySpan<byte> wide = Wide(extra);
        length = Widen(length, ref wide);
        compressed = Widen(compressed, ref wide);
        header = Widen(header, ref wide);
        return new(
            Encoding.UTF8.GetString(name),
            BinaryPrimitives.ReadUInt16LittleEndian(record[10..]),
            BinaryPrimitives.ReadUInt16LittleEndian(record[8..]),
            BinaryPrimitives.ReadUInt32LittleEndian(record[16..]),
            compressed,
            length,
            header
        );
    }

    private static long Widen(long value, ref ReadOnlySpan<byte> wide)
    {
        if (value != uint.MaxValue || wide.Length < sizeof(long))
            return value;
        long widened = BinaryPrimitives.ReadInt64LittleEndian(wide);
        wide = wide[sizeof(long)..];
        return widened;
    }

    private static ReadOnlySpan<byte> Wide(ReadOnlySpan<byte> extra)
    {
        while (extra.Length >= 4)
        {
            int id = BinaryPrimitives.ReadUInt16LittleEndian(extra),
                size = BinaryPrimitives.ReadUInt16LittleEndian(extra[2..]);
            if (size > extra.Length - 4)
                break;
            if (id == 1)
                return extra.Slice(4, size);
            extra = extra[(4 + size)..];
        }
        return default;
    }
}
