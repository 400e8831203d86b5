using System.Text;
using CalibGeom.Features.Files;

namespace CalibGeom.Verification.Logs;

/// <summary>
/// The lines of a log, each of a bounded length. From a file a character is a byte, so that a line that was cut off
/// within a letter is told from one in another encoding.
/// </summary>
/// <param name="reader">Where from.</param>
/// <param name="name">The log's name, for messages.</param>
/// <param name="isBytes">Whether a character of the reader is a byte.</param>
internal sealed class LogLines(TextReader reader, string name, bool isBytes)
{
    /// <summary>The longest line, characters.</summary>
    internal const int LongestLine = ReaderLimits.LogLineCharacters;

    /// <summary>The most lines: three prints a day for ninety years.</summary>
    internal const int MostLines = ReaderLimits.LogLines;

    private static readonly UTF8Encoding Strict = new(
        encoderShouldEmitUTF8Identifier: false,
        throwOnInvalidBytes: true
    );

    /// <summary>The number of the line that was read last, from 1.</summary>
    internal int Number { get; private set; }

    /// <summary>Where it stands, for messages.</summary>
    internal string Where => FormattableString.Invariant($"{name}:{Number}");

    /// <summary>The next line; null after the last.</summary>
    /// <exception cref="InputException">It is too long, one too many, or no UTF-8.</exception>
    internal string? Next()
    {
        if (Line() is not { } text)
            return null;
        if (++Number > MostLines)
            throw new InputException($"{name} has more than {MostLines} lines. Begin a new log.");
        string line = isBytes ? Decoded(text) : text;
        return Number == 1 ? line.TrimStart('\uFEFF') : line;
    }

    private string? Line()
    {
        string? line = BoundedLine.Read(reader, LongestLine);
        return line?.Length > LongestLine
            ? throw new InputException(
                FormattableString.Invariant(
                    $"{name}:{Number + 1}: this line is longer than {LongestLine} characters. It is no log."
                )
            )
            : line?.TrimEnd('\r');
    }

    private string Decoded(string characters)
    {
        byte[] bytes = Encoding.Latin1.GetBytes(characters);
        if (TryDecode(bytes) is { } line)
            return line;
        // A line that was cut off within a letter is whole without the beginning of that letter.
        int whole = bytes.Length;
        while (whole > 0 && bytes[whole - 1] >= 0x80)
            whole--;
        return bytes.Length - whole is > 0 and < 4 && TryDecode(bytes.AsSpan(0, whole)) is { } cut
            ? cut
            : throw new InputException($"{Where}: a log is UTF-8 text, and this line is not. Save it as UTF-8.");
    }

    private static string? TryDecode(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
