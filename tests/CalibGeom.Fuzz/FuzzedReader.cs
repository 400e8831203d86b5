namespace CalibGeom.Fuzz;

/// <summary>A reader, what it is fed with, and how what was changed becomes a file.</summary>
/// <param name="Name">Its name in tables.</param>
/// <param name="Corpus">Files of the corpus that it reads.</param>
/// <param name="Read">Reads a file to its end.</param>
internal sealed record FuzzedReader(string Name, IReadOnlyList<string> Corpus, Action<byte[]> Read)
{
    /// <summary>From a file of the corpus to what is changed; by default the same.</summary>
    internal Func<byte[], byte[]> Opened { get; init; } = bytes => bytes;

    /// <summary>From what was changed to the file that is read; by default the same.</summary>
    internal Func<byte[], byte[]> Packed { get; init; } = bytes => bytes;

    public override string ToString() => Name;
}
