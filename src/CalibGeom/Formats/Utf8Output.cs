using System.Globalization;
using System.Text;

namespace CalibGeom.Formats;

/// <summary>
/// Buffered UTF-8 text with numbers in the shortest form that reads back to the same value, whatever the culture.
/// </summary>
internal sealed class Utf8Output(Stream stream)
{
    private readonly byte[] buffer = new byte[1 << 15];
    private int filled;

    internal Utf8Output Append(string text)
    {
        foreach (char[] part in text.Chunk(buffer.Length / 4))
        {
            if (filled + Encoding.UTF8.GetMaxByteCount(part.Length) > buffer.Length)
                Flush();
            filled += Encoding.UTF8.GetBytes(part, buffer.AsSpan(filled));
        }
        return this;
    }

    internal Utf8Output Append(ReadOnlySpan<byte> text)
    {
        if (filled + text.Length > buffer.Length)
            Flush();
        text.CopyTo(buffer.AsSpan(filled));
        filled += text.Length;
        return this;
    }

    internal Utf8Output Append(double value)
    {
        if (filled + 32 > buffer.Length)
            Flush();
        (value + 0.0).TryFormat(buffer.AsSpan(filled), out int written, default, CultureInfo.InvariantCulture);
        filled += written;
        return this;
    }

    internal Utf8Output Append(int value)
    {
        if (filled + 16 > buffer.Length)
            Flush();
        value.TryFormat(buffer.AsSpan(filled), out int written, default, CultureInfo.InvariantCulture);
        filled += written;
        return this;
    }

    internal void Flush()
    {
        stream.Write(buffer, 0, filled);
        filled = 0;
    }
}
