namespace CalibGeom.Pictures.Drawings;

/// <summary>The text in a PNG that says which program wrote it, so that it can be told from other people's.</summary>
internal static class PngMark
{
    // The chunk IEND, which ends every PNG: length, name and check value.
    private const int EndLength = 12;

    // A chunk tEXt after the PNG specification: length, name, keyword, text and the CRC-32 of all but the length.
    private static ReadOnlySpan<byte> Chunk => "\0\0\0\u0012tEXtSoftware\0calibgeom"u8;

    private static ReadOnlySpan<byte> Check => [0xE7, 0x1E, 0x7E, 0x90];

    /// <summary>Writes a picture with the mark before its end.</summary>
    internal static void Write(ReadOnlySpan<byte> png, Stream stream)
    {
        stream.Write(png[..^EndLength]);
        stream.Write(Chunk);
        stream.Write(Check);
        stream.Write(png[^EndLength..]);
    }
}
