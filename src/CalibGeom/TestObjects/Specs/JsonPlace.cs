using System.Text.Json;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Where in a JSON text something stands.</summary>
internal static class JsonPlace
{
    private const int LongestPath = 120;

    /// <summary>A line and column from 1, a column being a character.</summary>
    internal static InputPlace Of(ReadOnlySpan<byte> bytes, long offset)
    {
        ReadOnlySpan<byte> before = bytes[..(int)Math.Min(offset, bytes.Length)];
        int line = before.Count((byte)'\n') + 1;
        int column = 1;
        foreach (byte b in before[(before.LastIndexOf((byte)'\n') + 1)..])
            if ((b & 0xC0) != 0x80)
                column++;
        return new InputPlace(Line: line, Column: column);
    }

    /// <summary>The offset of a line and byte, both from 0.</summary>
    internal static long Offset(ReadOnlySpan<byte> bytes, long line, long byteInLine)
    {
        int start = 0;
        for (; line > 0; line--)
            start += bytes[start..].IndexOf((byte)'\n') + 1;
        return start + byteInLine;
    }

    /// <summary>What a JSON reader has to say, without its own account of the place.</summary>
    internal static string Reason(JsonException e)
    {
        int end = e.Message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        return $"not JSON that a spec can be read from: {(end < 0 ? e.Message : e.Message[..end])}";
    }

    /// <summary>
    /// What to say when a digit follows a comma where a name should: <c>6,31</c> is read as 6 and then nonsense.
    /// </summary>
    internal static string CommaHint(ReadOnlySpan<byte> bytes, long offset) =>
        offset > 0
        && offset < bytes.Length
        && bytes[(int)offset - 1] == ','
        && char.IsAsciiDigit((char)bytes[(int)offset])
            ? " Numbers have a decimal point, not a comma."
            : "";

    /// <summary>A path that fits into a message.</summary>
    internal static string Shorten(string path) => path.Length <= LongestPath ? path : $"{path[..LongestPath]}...";
}
