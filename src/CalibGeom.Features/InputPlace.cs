namespace CalibGeom.Features;

/// <summary>Where in an input something is wrong, as far as that is known.</summary>
/// <param name="File">The input's name, or null.</param>
/// <param name="Line">The line, from 1, or null.</param>
/// <param name="Column">The column, from 1, or null.</param>
/// <param name="Path">The place in a JSON document, such as <c>$.nest.sizes[1]</c>, or null.</param>
public sealed record InputPlace(string? File = null, int? Line = null, int? Column = null, string? Path = null)
{
    /// <summary>Nowhere in particular.</summary>
    public static InputPlace Unknown { get; } = new();

    /// <summary>
    /// As it stands before a sentence: <c>readings.csv line 3</c>, <c>Line 3</c>, <c>$.nest (line 2, column 5)</c>;
    /// empty when nothing is known.
    /// </summary>
    public override string ToString()
    {
        string lines = (Line, Column) switch
        {
            (null, _) => "",
            ({ } line, null) => FormattableString.Invariant($"line {line}"),
            ({ } line, { } column) => FormattableString.Invariant($"line {line}, column {column}"),
        };
        return (File, Path, lines) switch
        {
            (null, null, "") => "",
            (null, null, _) => char.ToUpperInvariant(lines[0]) + lines[1..],
            ({ } file, null, "") => file,
            ({ } file, null, _) => $"{file} {lines}",
            (_, { } path, _) => (File is null ? "" : $"{File}: ") + path + (lines.Length > 0 ? $" ({lines})" : ""),
        };
    }
}
