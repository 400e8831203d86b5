using CalibGeom.Objects;

namespace CalibGeom.Cli.Shared;

/// <summary>Recognises a file that was given in the place of another, and names the command it belongs to.</summary>
internal static class WrongFile
{
    /// <exception cref="InputException">The file is missing, a directory, or of another kind.</exception>
    internal static void Require(string path, InputKind wanted)
    {
        if (Directory.Exists(path))
            throw new InputException($"{path}: this is a directory. {Remedy(wanted)}");
        if (!File.Exists(path))
            throw new InputException($"{path}: there is no such file. {Remedy(wanted)}");
        InputKind found = KindOf(path);
        if (found != wanted && found != InputKind.Unknown)
            throw new InputException($"{path} is {Describe(found, path)} {Remedy(wanted)}");
    }

    /// <summary>What a file is, by its name and first lines.</summary>
    internal static InputKind KindOf(string path)
    {
        if (!File.Exists(path))
            return InputKind.Unknown;
        string lower = path.ToLowerInvariant();
        if (
            lower.EndsWith(".stl", StringComparison.Ordinal)
            || lower.EndsWith(".obj", StringComparison.Ordinal)
            || lower.EndsWith(".3mf", StringComparison.Ordinal)
        )
            return InputKind.Mesh;
        if (lower.EndsWith(ObjectFile.Extension, StringComparison.Ordinal))
            return InputKind.Object;
        using var reader = new StreamReader(path);
        for (string? line = reader.ReadLine(); line is not null; line = reader.ReadLine())
        {
            string text = line.TrimStart('\uFEFF', ' ', '"');
            if (
                text.StartsWith('{')
                && (
                    text.Contains("\"time\"", StringComparison.Ordinal)
                    || text.Contains("\"undo\"", StringComparison.Ordinal)
                )
            )
                return InputKind.Log;
            if (text.StartsWith("feature,nominal", StringComparison.Ordinal))
                return InputKind.Features;
            if (
                text.StartsWith("feature,value", StringComparison.Ordinal)
                || text.StartsWith("feature;value", StringComparison.Ordinal)
            )
                return InputKind.Readings;
            if (text.Length > 0 && !text.StartsWith('#'))
                return InputKind.Unknown;
        }
        return InputKind.Unknown;
    }

    private static string Describe(InputKind kind, string path) =>
        kind switch
        {
            InputKind.Mesh => $"a mesh: \"calibgeom inspect {path}\" looks at it.",
            InputKind.Object => $"an object file: give it as {ObjectOption.Name} {path}.",
            InputKind.Features =>
                $"a table of what to measure, without values: \"calibgeom readings {ObjectOption.Name} {path}\" makes a sheet of it.",
            InputKind.Readings => $"a sheet of readings: \"calibgeom log add {path} --to LOG\" puts it into a log.",
            _ => $"a log: \"calibgeom tune {path}\" reads it.",
        };

    private static string Remedy(InputKind wanted) =>
        wanted switch
        {
            InputKind.Readings => "Name a readings file; \"calibgeom readings\" writes an empty one.",
            InputKind.Log => "Name a log; \"calibgeom log add READINGS --to LOG\" begins one.",
            _ => "Name a mesh in STL, OBJ or 3MF.",
        };
}
