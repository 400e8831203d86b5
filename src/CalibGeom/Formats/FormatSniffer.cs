namespace CalibGeom.Formats;

/// <summary>
/// Decides a format by content. A length of exactly 84 + 50 times the number at byte 80 is a binary STL whatever its
/// header says; only then the first bytes count: a zip is 3MF, text beginning with "solid" is ASCII STL, text beginning
/// with an OBJ statement is OBJ. What is no text is a damaged binary STL.
/// </summary>
internal static class FormatSniffer
{
    internal static IMeshFormat Decide(Stream stream, Faults faults)
    {
        var sample = new FileSample(stream);
        foreach (IMeshFormat format in IMeshFormat.All)
            if (format.Recognises(sample))
                return format;
        if (sample.Length == 0)
            throw faults.Fatal("is empty: 0 bytes", "Export the mesh again.");
        if (!sample.IsText)
            return IMeshFormat.All[0];
        throw faults.Fatal("is text but neither ASCII STL nor OBJ", "Give an STL, OBJ or 3MF file.");
    }
}
