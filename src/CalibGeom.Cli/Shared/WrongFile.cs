using System.Text;
using CalibGeom.Features.Files;
using CalibGeom.Objects;

namespace CalibGeom.Cli.Shared;

/// <summary>Recognises a file that was given in the place of another, and names the command it belongs to.</summary>
internal static class WrongFile
{
    private const int HeadBytes = 1 << 16;

    /// <exception cref="InputException">The file is missing, a directory, or of another kind.</exception>
    internal static void Require(string path, InputKind wanted)
    {
        if (Directory.Exists(path))
            throw new InputException(InputIds.File, $"{path}: this is a directory. {Remedy(wanted)}");
        if (!File.Exists(path))
            throw new InputException(InputIds.File, $"{path}: there is no such file. {Remedy(wanted)}");
        RequireNoOther(path, wanted);
    }

    /// <summary>The same where a file that is missing is told elsewhere.</summary>
    /// <exception cref="InputException">The file is of another kind.</exception>
    internal static void RequireNoOther(string path, InputKind wanted)
    {
        InputKind found = KindOf(path);
        if (found != wanted && found != InputKind.Unknown)
            throw new InputException(InputIds.Option, $"{path} is {Describe(found, path)} {Remedy(wanted)}");
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
        foreach (string line in Head(path).Split('\n'))
        {
            string text = line.TrimStart(' ', '"', '\r');
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
            if (text.StartsWith("date,jaw,gauge", StringComparison.Ordinal))
                return InputKind.Caliper;
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

    /// <summary>
    /// The beginning of a file, byte by byte: the words looked for are ASCII, and a file of any size and encoding is
    /// told apart without reading it whole. Nothing is taken from a pipe, which can be read once only.
    /// </summary>
    private static string Head(string path)
    {
        if (new FileInfo(path).Length == 0)
            return "";
        using FileStream stream = AppendedFile.OpenToRead(path);
        if (!stream.CanSeek)
            return "";
        var head = new byte[HeadBytes];
        int read = stream.ReadAtLeast(head, HeadBytes, throwOnEndOfStream: false);
        ReadOnlySpan<byte> text = head.AsSpan(0, read);
        return Encoding.Latin1.GetString(text.StartsWith(Encoding.UTF8.Preamble) ? text[3..] : text);
    }

    private static string Describe(InputKind kind, string path) =>
        kind switch
        {
            InputKind.Mesh => $"a mesh: \"calibgeom inspect {path}\" looks at it.",
            InputKind.Object => $"an object file: give it as {ObjectOption.Name} {path}.",
            InputKind.Features =>
                $"a table of what to measure, without values: \"calibgeom readings {ObjectOption.Name} {path}\" makes a sheet of it.",
            InputKind.Caliper => $"a caliper record: \"calibgeom caliper show {path}\" reads it.",
            InputKind.Readings => $"a sheet of readings: \"calibgeom log add {path} --to LOG\" puts it into a log.",
            _ => $"a log: \"calibgeom tune {path}\" reads it.",
        };

    private static string Remedy(InputKind wanted) =>
        wanted switch
        {
            InputKind.Readings => "Name a readings file; \"calibgeom readings\" writes an empty one.",
            InputKind.Caliper => "Name a caliper record; \"calibgeom caliper add\" begins one.",
            InputKind.Object => "Name a preset, a spec, or what stands beside a mesh that was made.",
            InputKind.Log => "Name a log; \"calibgeom log add READINGS --to LOG\" begins one.",
            _ => "Name a mesh in STL, OBJ or 3MF.",
        };
}
