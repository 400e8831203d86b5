using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Objects;
using CalibGeom.Plates;

namespace CalibGeom.Cli.Place;

/// <summary>
/// The parts of one run, with progress for a person who watches and a temporary file for standard input.
/// </summary>
internal sealed class PlaceParts : IDisposable
{
    private readonly CommandIo io;
    private readonly List<PlatePart> parts = [];
    private readonly List<string> paths = [];
    private TemporaryCopy? copy;
    private string shown = "";

    private PlaceParts(CommandIo io) => this.io = io;

    internal IReadOnlyList<PlatePart> All => parts;

    /// <exception cref="InputException">A part cannot be read.</exception>
    internal static PlaceParts Open(CommandIo io, IEnumerable<string> paths, bool lenient)
    {
        var opened = new PlaceParts(io);
        try
        {
            foreach (string path in paths)
                opened.Add(path == "-" ? opened.Copy() : path, lenient);
        }
        catch
        {
            opened.Dispose();
            throw;
        }
        if (io.Interactive)
            foreach (PlatePart part in opened.parts)
                part.Progress = opened.Show;
        return opened;
    }

    /// <summary>The parts as the object file names them.</summary>
    internal IReadOnlyList<ObjectPart> Describe() =>
        paths
            .Select(path =>
            {
                using FileStream stream = File.OpenRead(path);
                return ObjectPart.Of(path == copy?.Path ? "standard input" : Path.GetFileName(path), stream);
            })
            .ToArray();

    /// <summary>Wipes the line of progress.</summary>
    internal void EndProgress()
    {
        if (shown.Length > 0)
            io.Progress.Write($"\r{new string(' ', shown.Length)}\r");
        shown = "";
    }

    public void Dispose()
    {
        copy?.Dispose();
    }

    private void Add(string path, bool lenient)
    {
        parts.Add(PlatePart.Open(path, lenient));
        paths.Add(path);
    }

    private void Show(PlatePart part, long done)
    {
        string text = $"{part.Name} {100 * done / part.TriangleCount} %";
        if (text == shown)
            return;
        io.Progress.Write($"\r{text.PadRight(shown.Length)}");
        shown = text.PadRight(shown.Length);
    }

    /// <summary>A part is gone through several times, which standard input cannot be.</summary>
    private string Copy()
    {
        using Stream input = io.OpenInput();
        copy = TemporaryCopy.Of(input, "standard input");
        return copy.Path;
    }
}
