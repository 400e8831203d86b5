using System.Text;

namespace CalibGeom.Features.Files;

/// <summary>Reading whole inputs with a limit, so that a huge one is answered at once.</summary>
public static class InputBytes
{
    private static readonly UTF8Encoding Strict = new(
        encoderShouldEmitUTF8Identifier: false,
        throwOnInvalidBytes: true
    );

    /// <summary>All bytes of a stream, if there are no more than the limit.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="limit">The most bytes.</param>
    /// <param name="what">What is read, for the message: <c>a feature table</c>.</param>
    /// <exception cref="InputException">There are more.</exception>
    public static byte[] Read(Stream stream, int limit, string what)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var buffer = new byte[1 << 16];
        int read;
        while ((read = stream.Read(buffer)) > 0)
        {
            if (bytes.Length + read > limit)
                throw new InputException(
                    InputIds.File,
                    $"The input is larger than {limit >> 10} KiB, the limit for {what}. Check that it is the "
                        + $"right file."
                );
            bytes.Write(buffer, 0, read);
        }
        return bytes.ToArray();
    }

    /// <summary>A file's text, if it is UTF-8 and no larger than the limit.</summary>
    /// <param name="path">The file.</param>
    /// <param name="limit">The most bytes.</param>
    /// <param name="what">What it is, for the message: <c>a caliper record</c>.</param>
    /// <exception cref="InputException">It is larger, or not UTF-8; the message begins with the path.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static string TextOf(string path, int limit, string what)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(what);
        try
        {
            using FileStream stream = File.OpenRead(path);
            return Utf8(Read(stream, limit, what), what.Length > 0 ? char.ToUpperInvariant(what[0]) + what[1..] : what);
        }
        catch (InputException e)
        {
            throw e.In(path);
        }
    }

    /// <summary>Bytes as text, without a byte order mark.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <param name="what">What they are, for the message: <c>A feature table</c>.</param>
    /// <exception cref="InputException">They are not UTF-8.</exception>
    public static string Utf8(ReadOnlySpan<byte> bytes, string what)
    {
        try
        {
            return Strict.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException e)
        {
            throw new InputException(
                InputIds.File,
                $"{what} must be UTF-8 text; byte {e.Index + 1} is not. Save it as UTF-8.",
                e
            );
        }
    }
}
