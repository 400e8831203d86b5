using System.Text;

namespace CalibGeom.Formats;

/// <summary>Reading whole inputs with a limit, so that a huge one is answered at once.</summary>
internal static class InputBytes
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>All bytes of a stream, if there are no more than the limit.</summary>
    /// <exception cref="InputException">There are more.</exception>
    internal static byte[] Read(Stream stream, int limit, string what)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var buffer = new byte[1 << 16];
        int read;
        while ((read = stream.Read(buffer)) > 0)
        {
            if (bytes.Length + read > limit) throw new InputException($"The input is larger than {limit >> 10} KiB, the limit for {what}. Check that it is the right file.");
            bytes.Write(buffer, 0, read);
        }
        return bytes.ToArray();
    }

    /// <summary>Bytes as text, without a byte order mark.</summary>
    /// <exception cref="InputException">They are not UTF-8.</exception>
    internal static string Utf8(ReadOnlySpan<byte> bytes, string what)
    {
        try
        {
            return Strict.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException e)
        {
            throw new InputException($"{what} must be UTF-8 text; byte {e.Index + 1} is not. Save it as UTF-8.", e);
        }
    }
}
