using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Terminals;
using CalibGeom.Features.Files;
using CalibGeom.Objects;
using CalibGeom.Plates;

namespace CalibGeom.Cli.Place;

/// <summary>
/// The parts of one run, with progress for a person who watches and temporary files for what can be read once only.
/// </summary>
internal sealed class PlaceParts : IDisposable
{
    private readonly CommandIo io;
    private readonly List<PlatePart> parts = [];
    private readonly List<(string Path, string Name)> files = [];
    private readonly List<TemporaryCopy> copies = [];
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
                opened.Add(path, lenient);
        }
        catch
        {
            opened.Dispose();
            throw;
        }
        if (opened.bar is { } bar)
            foreach (PlatePart part in opened.parts)
                part.Progress = bar.Of(part.Name);
        return opened;
    }

    /// <summary>The parts as the object file names them.</summary>
    internal IReadOnlyList<ObjectPart> Describe() =>
        files
            .Select(file =>
            {
                using FileStream stream = File.OpenRead(file.Path);
                return ObjectPart.Of(Path.GetFileName(file.Name), stream);
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
        foreach (TemporaryCopy copy in copies)
            copy.Dispose();
    }

    private void Add(string path, bool lenient)
    {
        if (path != "-")
            WrongFile.RequireNoOther(path, InputKind.Mesh);
        string name = path == "-" ? ObjectFinder.StandardInput : path,
            seekable = Seekable(path, name);
        parts.Add(PlatePart.Open(seekable, lenient, name));
        files.Add((seekable, name));
    }

    /// <summary>
    /// The file itself, or a copy of what can be read once only: a part is gone through several times, which standard
    /// input and pipes cannot be.
    /// </summary>
    private string Seekable(string path, string name)
    {
        if (path != "-" && !File.Exists(path))
            return path;
        using Stream input = path == "-" ? io.OpenInput() : File.OpenRead(path);
        if (path != "-" && input.CanSeek)
            return path;
        var copy = TemporaryCopy.Of(input, name);
        copies.Add(copy);
        return copy.Path;
    }
}
