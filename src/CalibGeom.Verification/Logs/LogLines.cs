using System.Text;
using CalibGeom.Features.Files;

namespace CalibGeom.Verification.Logs;

/// <summary>
/// The lines of a log, each of a bounded length. A line is decoded by itself, so that one that was cut off within a
/// letter is told from one in another encoding.
/// </summary>
/// <param name="stream">Where from; stays open.</param>
/// <param name="name">The log's name, for messages.</param>
internal sealed class LogLines(Stream stream, string name) : IDisposable
{
    // Each character is a byte.
    private readonly StreamReader reader = new(stream, Encoding.Latin1, false, 1 << 12, leaveOpen: true);

    /// <summary>The longest line, bytes.</summary>
    internal const int LongestLine = ReaderLimits.LogLineBytes;

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
        if (Line() is not { } bytes)
            return null;
        if (++Number > MostLines)
            throw new InputException(InputIds.Log, $"{name} has more than {MostLines} lines. Begin a new log.");
        string line = Decoded(bytes);
        return Number == 1 ? line.TrimStart('\uFEFF') : line;
    }

    /// <summary>Ends reading; the stream stays open.</summary>
    public void Dispose() => reader.Dispose();

    private byte[]? Line()
    {
        if (BoundedLine.Read(reader, LongestLine) is not { } line)
            return null;
        return line.Length > LongestLine
            ? throw new InputException(
                InputIds.Log,
                FormattableString.Invariant(
                    $"{name}:{Number + 1}: this line is longer than {LongestLine} bytes. It is no log."
                )
            )
            : Encoding.Latin1.GetBytes(line);
    }

    private string Decoded(byte[] bytes)
    {
        if (TryDecode(bytes) is { } line)
            return line.TrimEnd('\r');
        // A line that was cut off within a letter is whole without the beginning of that letter.
        int whole = bytes.Length;
        while (whole > 0 && bytes[whole - 1] >= 0x80)
            whole--;
        return bytes.Length - whole is > 0 and < 4 && TryDecode(bytes.AsSpan(0, whole)) is { } cut
            ? cut
            : throw new InputException(
                InputIds.Log,
                $"{Where}: a log is UTF-8 text, and this line is not. Save it as UTF-8."
            );
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
