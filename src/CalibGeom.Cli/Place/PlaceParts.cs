using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Terminals;
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
    private ProgressBar? bar;

    private PlaceParts(CommandIo io) => (this.io, bar) = (io, ProgressBar.For(io, "placing"));

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
        if (opened.bar is { } bar)
            foreach (PlatePart part in opened.parts)
                part.Progress = (p, done) => bar.Report(p.Name, (double)done / p.TriangleCount);
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

    /// <summary>Wipes the bar away; the parts are gone through no more.</summary>
    internal void EndProgress()
    {
        foreach (PlatePart part in parts)
            part.Progress = null;
        bar?.Dispose();
        bar = null;
    }

    public void Dispose()
    {
        EndProgress();
        copy?.Dispose();
    }

    private void Add(string path, bool lenient)
    {
        parts.Add(PlatePart.Open(path, lenient));
        paths.Add(path);
    }

    /// <summary>A part is gone through several times, which standard input cannot be.</summary>
    private string Copy()
    {
        using Stream input = io.OpenInput();
        copy = TemporaryCopy.Of(input, "standard input");
        return copy.Path;
    }
}
