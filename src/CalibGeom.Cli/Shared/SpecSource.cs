using CalibGeom.Formats;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Shared;

/// <summary>A spec with the name that files made from it get.</summary>
internal sealed record SpecSource(string Name, TestObjectSpec Spec)
{
    /// <summary>
    /// The spec that a command line asks for: a preset, a document laid over it, then values set one by one.
    /// </summary>
    /// <exception cref="InputException">No such preset or file, or not a spec.</exception>
    internal static SpecSource Load(CommandIo io, string? path, string? presetName, IReadOnlyList<string> assignments)
    {
        Preset preset = FindPreset(presetName ?? "standard");
        if (path is null)
            return new SpecSource(preset.Name, SpecJson.With(preset.Spec, assignments));
        string shown = path == "-" ? "standard input" : path;
        try
        {
            using Stream stream = path == "-" ? io.OpenInput() : Open(path);
            TestObjectSpec spec = path.EndsWith(".3mf", StringComparison.OrdinalIgnoreCase)
                ? SpecJson.Parse(Carried(stream, path), preset.Spec, assignments)
                : SpecJson.Read(stream, preset.Spec, assignments);
            return new SpecSource(path == "-" ? "spec" : NameOf(path), spec);
        }
        catch (InputException e)
        {
            throw new InputException($"{shown}: {e.Message}", e);
        }
    }

    /// <exception cref="InputException">There is no such preset.</exception>
    internal static Preset FindPreset(string name) =>
        Presets.Find(name)
        ?? throw new InputException(
            $"There is no preset \"{name}\". The presets are {string.Join(", ", Presets.All.Select(p => p.Name))}."
        );

    private static FileStream Open(string path)
    {
        if (Directory.Exists(path))
            throw new InputException("this is a directory. Name a spec.");
        if (!File.Exists(path))
            throw new InputException("there is no such file. Name a spec, or leave it away and take a preset.");
        return File.OpenRead(path);
    }

    private static string Carried(Stream stream, string path) =>
        MeshFile.Read(stream, path).SpecJson
        ?? throw new InputException("this 3MF carries no spec. Take one that make has written, or a spec in JSON.");

    private static string NameOf(string path)
    {
        string name = Path.GetFileNameWithoutExtension(path);
        return name.Length > 0 ? name : "spec";
    }
}
