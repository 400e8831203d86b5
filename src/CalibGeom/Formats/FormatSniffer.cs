using System.Buffers.Binary;
using System.Text;
using CalibGeom.Formats.Obj;
using CalibGeom.Formats.Stl;

namespace CalibGeom.Formats;

/// <summary>
/// Decides a format by content. A length of exactly 84 + 50 times the number at byte 80 is a binary STL whatever its
/// header says; only then
/// the first bytes count: a zip is 3MF, text beginning with "solid" is ASCII STL, text beginning with an OBJ statement
/// is OBJ.
/// </summary>
internal static class FormatSniffer
{
    private const int SampleLength = 1024;

    internal static MeshFormat Decide(Stream stream, Faults faults)
    {
        long start = stream.Position,
            length = stream.Length - start;
        var buffer = new byte[SampleLength];
        int got = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        stream.Position = start;
        ReadOnlySpan<byte> sample = buffer.AsSpan(0, got);
        if (
            got >= StlTriangleStream.PreambleLength
            && StlLength.Agrees(length, BinaryPrimitives.ReadUInt32LittleEndian(sample[StlWriter.HeaderLength..]))
        )
            return MeshFormat.StlBinary;
        if (sample.StartsWith("PK"u8))
            return MeshFormat.ThreeMf;
        if (length == 0)
            throw faults.Fatal("is empty: 0 bytes", "Export the mesh again.");
        if (!IsText(sample))
            return MeshFormat.StlBinary;
        return Text(sample)
            ?? throw faults.Fatal("is text but neither ASCII STL nor OBJ", "Give an STL, OBJ or 3MF file.");
    }

    private static MeshFormat? Text(ReadOnlySpan<byte> sample)
    {
        string text = Encoding
            .Latin1.GetString(sample.StartsWith(Encoding.UTF8.Preamble) ? sample[3..] : sample)
            .TrimStart();
        if (text.StartsWith('#'))
            return MeshFormat.Obj;
        int end = text.AsSpan().IndexOfAny(" \t\r\n\f");
        string first = end < 0 ? text : text[..end];
        if (first.Equals("solid", StringComparison.OrdinalIgnoreCase))
            return MeshFormat.StlAscii;
        return ObjReader.IsStatement(first) ? MeshFormat.Obj : null;
    }

    private static bool IsText(ReadOnlySpan<byte> sample)
    {
        foreach (byte b in sample)
            if (b < ' ' && b is not ((byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)'\f'))
                return false;
        return true;
    }
}
