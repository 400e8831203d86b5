using System.Text;
using CalibGeom.Features.Files;

namespace CalibGeom.Formats;

/// <summary>
/// Words separated by white space from a text of any length, in constant memory, with line numbers. A line ends with
/// LF, CR LF or CR; a span that was handed out is good until the next call.
/// </summary>
internal sealed class TextTokens
{
    private const int LongestLine = ReaderLimits.MeshLineBytes;

    private readonly Stream stream;
    private readonly Faults faults;
    private byte[] buffer = new byte[1 << 16];
    private int filled;
    private int lineEnd;
    private int nextLine;
    private int at;
    private bool ended;

    internal TextTokens(Stream stream, Faults faults)
    {
        (this.stream, this.faults) = (stream, faults);
        Fill();
        if (buffer.AsSpan(0, filled).StartsWith(Encoding.UTF8.Preamble))
            nextLine = 3;
    }

    /// <summary>The number of the current line, from 1; 0 before the first.</summary>
    internal int Line { get; private set; }

    /// <summary>Goes to the next line; false at the end.</summary>
    internal bool NextLine()
    {
        int length;
        while (
            (length = buffer.AsSpan(nextLine, filled - nextLine).IndexOfAny((byte)'\n', (byte)'\r')) < 0
            || AtSplitEnd(length)
        )
            if (!Fill())
                break;
        if (length < 0)
            length = filled - nextLine;
        if (length == 0 && nextLine == filled)
            return false;
        at = nextLine;
        lineEnd = nextLine + length;
        nextLine = Math.Min(filled, lineEnd + 1);
        if (lineEnd + 1 < filled && buffer[lineEnd] == '\r' && buffer[lineEnd + 1] == '\n')
            nextLine++;
        Line++;
        return true;
    }

    /// <summary>The next word of this line; empty at its end.</summary>
    internal ReadOnlySpan<byte> WordInLine()
    {
        while (at < lineEnd && IsSpace(buffer[at]))
            at++;
        int start = at;
        while (at < lineEnd && !IsSpace(buffer[at]))
            at++;
        return buffer.AsSpan(start, at - start);
    }

    /// <summary>The next word of this line or a later one; empty at the end of the text.</summary>
    internal ReadOnlySpan<byte> Word()
    {
        while (true)
        {
            ReadOnlySpan<byte> word = WordInLine();
            if (word.Length > 0 || !NextLine())
                return word;
        }
    }

    /// <summary>What is left of this line, trimmed.</summary>
    internal string RestOfLine()
    {
        string rest = Encoding.UTF8.GetString(buffer, at, lineEnd - at).Trim();
        at = lineEnd;
        return rest;
    }

    // A CR as the last byte of the block may be half of a CR LF.
    private bool AtSplitEnd(int length) => !ended && nextLine + length == filled - 1;

    private bool Fill()
    {
        if (ended)
            return false;
        if (nextLine > 0)
        {
            buffer.AsSpan(nextLine, filled - nextLine).CopyTo(buffer);
            filled -= nextLine;
            nextLine = at = lineEnd = 0;
        }
        if (filled == buffer.Length)
        {
            if (filled >= LongestLine)
                throw faults.Fatal($"the line is longer than {LongestLine} bytes", line: Line + 1);
            Array.Resize(ref buffer, 2 * filled);
        }
        int got = stream.Read(buffer, filled, buffer.Length - filled);
        filled += got;
        ended = got == 0;
        return !ended;
    }

    private static bool IsSpace(byte b) => b is (byte)' ' or (byte)'\t' or (byte)'\f' or 0x0b;
}
