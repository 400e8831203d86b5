using System.Buffers.Binary;
using System.Text;

namespace CalibGeom.Formats;

/// <summary>The length of a file and its first bytes, by which its format is told.</summary>
internal sealed class FileSample
{
    private const int Most = 1024;
    private readonly byte[] bytes;

    /// <summary>Takes a sample and leaves the stream where it was.</summary>
    internal FileSample(Stream stream)
    {
        long start = stream.Position;
        Length = stream.Length - start;
        var buffer = new byte[Most];
        bytes = buffer[..stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false)];
        stream.Position = start;
        FirstWord = Word();
    }

    internal long Length { get; }

    internal ReadOnlySpan<byte> Bytes => bytes;

    /// <summary>The first word of a text, or <c>#</c> for a remark; empty when it is no text.</summary>
    internal string FirstWord { get; }

    /// <summary>Whether there is no byte that stands in no text.</summary>
    internal bool IsText
    {
        get
        {
            foreach (byte b in bytes)
                if (b < ' ' && b is not ((byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)'\f'))
                    return false;
            return true;
        }
    }

    /// <summary>The 32-bit number at a byte, or null beyond the sample.</summary>
    internal uint? NumberAt(int offset) =>
        bytes.Length >= offset + sizeof(uint) ? BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(offset)) : null;

    private string Word()
    {
        if (!IsText)
            return "";
        ReadOnlySpan<byte> marked = bytes.AsSpan();
        string text = Encoding
            .Latin1.GetString(marked.StartsWith(Encoding.UTF8.Preamble) ? marked[3..] : marked)
            .TrimStart();
        if (text.StartsWith('#'))
            return "#";
        int end = text.AsSpan().IndexOfAny(" \t\r\n\f");
        return end < 0 ? text : text[..end];
    }
}
