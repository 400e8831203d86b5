namespace CalibGeom.Cli.Shared;

/// <summary>The command that comes next, for a person to copy.</summary>
internal static class NextCommand
{
    /// <summary>After something was made: the sheet to measure it with.</summary>
    internal static void Readings(CommandIo io, string objectFile) =>
        Say(io, $"calibgeom readings {ObjectOption.Name} {Quoted(objectFile)} -o {Quoted(SheetOf(objectFile))}");

    internal static void Say(CommandIo io, string command) => io.Say($"next: {command}");

    /// <summary>A word as a shell takes it.</summary>
    internal static string Quoted(string word) =>
        word.All(c => char.IsAsciiLetterOrDigit(c) || "-_./=,:+".Contains(c, StringComparison.Ordinal))
            ? word
            : $"\"{word}\"";

    private static string SheetOf(string objectFile)
    {
        string end = CalibGeom.Objects.ObjectFile.Extension;
        return objectFile.EndsWith(end, StringComparison.OrdinalIgnoreCase)
            ? objectFile[..^end.Length] + ".readings.csv"
            : objectFile + ".readings.csv";
    }
}
