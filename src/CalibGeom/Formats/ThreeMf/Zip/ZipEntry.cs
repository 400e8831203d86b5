namespace CalibGeom.Formats.ThreeMf.Zip;

/// <summary>One entry of a zip's central directory.</summary>
internal sealed record ZipEntry(
    string Name,
    int Method,
    int Flags,
    uint Crc,
    long Compressed,
    long Length,
    long HeaderOffset
);
