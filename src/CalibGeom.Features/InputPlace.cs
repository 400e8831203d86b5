namespace CalibGeom.Features;

/// <summary>Where in an input something is wrong, as far as that is known. Immutable.</summary>
/// <param name="File">The input's name, or null.</param>
/// <param name="Line">The line, from 1, or null.</param>
/// <param name="Column">The column, from 1, or null.</param>
/// <param name="Path">The place in a JSON document, such as <c>$.nest.sizes[1]</c>, or null.</param>
public sealed record InputPlace(string? File = null, int? Line = null, int? Column = null, string? Path = null)
{
    /// <summary>Nowhere in particular.</summary>
    public static InputPlace Unknown { get; } = new();

    /// <summary>
    /// As it stands before a sentence: <c>readings.csv:3</c>, <c>spec.json:2:5: $.nest</c>; without a file <c>Line
    /// 3</c>, <c>$.nest (line 2, column 5)</c>; empty when nothing is known.
    /// </summary>
    public override string ToString() => File is { } file ? InFile(file) : Alone();

    private string InFile(string file)
    {
        string where = (Line, Column) switch
        {
            (null, _) => file,
            ({ } line, null) => FormattableString.Invariant($"{file}:{line}"),
            ({ } line, { } column) => FormattableString.Invariant($"{file}:{line}:{column}"),
        };
        return Path is { } path ? $"{where}: {path}" : where;
    }

    private string Alone()
    {
        string lines = (Line, Column) switch
        {
            (null, _) => "",
            ({ } line, null) => FormattableString.Invariant($"line {line}"),
            ({ } line, { } column) => FormattableString.Invariant($"line {line}, column {column}"),
        };
        return (Path, lines) switch
        {
            (null, "") => "",
            (null, _) => char.ToUpperInvariant(lines[0]) + lines[1..],
            ({ } path, "") => path,
            ({ } path, _) => $"{path} ({lines})",
        };
    }
}
