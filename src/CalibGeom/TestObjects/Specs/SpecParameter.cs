using System.Runtime.CompilerServices;

namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// What is known of one parameter of a spec: its place, shape and range, what it means and why its default is what it
/// is. The records' checks, the JSON reader, the JSON Schema, the reference in docs and the commented presets are all
/// made from these.
/// </summary>
internal sealed record SpecParameter(string Group, string Name, SpecKind Kind)
{
    /// <summary>The unit of a number; empty for counts, words and text.</summary>
    internal string Unit { get; init; } = "";

    /// <summary>The least number allowed, itself included.</summary>
    internal double Minimum { get; init; }

    /// <summary>The greatest number allowed, itself included.</summary>
    internal double Maximum { get; init; }

    /// <summary>The fewest entries of a list.</summary>
    internal int FewestEntries { get; init; } = 1;

    /// <summary>The most entries of a list, or characters of a text.</summary>
    internal int MostEntries { get; init; } = 1;

    /// <summary>The words allowed.</summary>
    internal IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>What it is, as a phrase.</summary>
    internal required string Meaning { get; init; }

    /// <summary>Why the default is what it is, as a sentence.</summary>
    internal required string Why { get; init; }

    /// <summary>Where it stands in a spec, such as <c>nest.sizes</c>.</summary>
    internal string Path => Group.Length == 0 ? Name : $"{Group}.{Name}";

    /// <summary>What it is and its range, as sentences.</summary>
    internal string Sentences =>
        $"{char.ToUpperInvariant(Meaning[0])}{Meaning[1..]}. {(Kind == SpecKind.Word ? "Values" : "Range")}: {Range}.";

    /// <summary>The range in words, such as <c>0.4 to 5 mm</c>.</summary>
    internal string Range =>
        Kind switch
        {
            SpecKind.Text => $"at most {MostEntries} characters out of {SpecText.Allowed}",
            SpecKind.Word => string.Join(" or ", Words.Select(w => $"\"{w}\"")),
            SpecKind.Numbers or SpecKind.PerAxisList => $"{FewestEntries} to {MostEntries} entries, each {NumberRange}",
            SpecKind.Size => $"three numbers, each {NumberRange}",
            _ => NumberRange,
        };

    private string NumberRange => SpecText.WithUnit(FormattableString.Invariant($"{Minimum} to {Maximum}"), Unit);

    internal double Require(double value, [CallerMemberName] string name = "") => Require(value, Path, name);

    internal int Require(int value, [CallerMemberName] string name = "") => (int)Require(value, Path, name);

    internal PerAxis Require(PerAxis value, [CallerMemberName] string name = "") => RequirePair(value, Path, name);

    internal PlateSize Require(PlateSize value, [CallerMemberName] string name = "") =>
        new(
            Require(value.X, $"{Path}[0]", name),
            Require(value.Y, $"{Path}[1]", name),
            Require(value.Z, $"{Path}[2]", name)
        );

    internal ValueList<double> Require(ValueList<double> values, [CallerMemberName] string name = "")
    {
        RequireCount(values, name);
        return values.Select((v, i) => Require(v, $"{Path}[{i}]", name)).ToValueList();
    }

    internal ValueList<PerAxis> Require(ValueList<PerAxis> values, [CallerMemberName] string name = "")
    {
        RequireCount(values, name);
        return values.Select((v, i) => RequirePair(v, $"{Path}[{i}]", name)).ToValueList();
    }

    internal string Require(string text, [CallerMemberName] string name = "")
    {
        ArgumentNullException.ThrowIfNull(text, name);
        return ProblemOf(text, Path) is { } problem ? throw new ArgumentException(problem, name) : text;
    }

    internal T RequireDefined<T>(T value, [CallerMemberName] string name = "")
        where T : struct, Enum =>
        Enum.IsDefined(value) ? value : throw new ArgumentOutOfRangeException(name, value, $"{Path} must be {Range}.");

    /// <summary>What is wrong with a number, or null.</summary>
    internal string? ProblemOf(double value, string path) =>
        value >= Minimum && value <= Maximum
            ? null
            : $"{path} is {SpecText.WithUnit(FormattableString.Invariant($"{value}"), Unit)}; the range is "
                + $"{NumberRange}.";

    /// <summary>What is wrong with a number of entries, or null.</summary>
    internal string? ProblemOfCount(int count, string path) =>
        count >= FewestEntries && count <= MostEntries
            ? null
            : $"{path} has {count} {(count == 1 ? "entry" : "entries")}; {FewestEntries} to {MostEntries} are allowed.";

    /// <summary>What is wrong with a text, or null.</summary>
    internal string? ProblemOf(string text, string path)
    {
        if (text.Length > MostEntries)
            return $"{path} has {text.Length} characters; at most {MostEntries} are allowed.";
        int bad = text.AsSpan().IndexOfAnyExcept(SpecText.Characters);
        return bad < 0
            ? null
            : $"{path} has a character U+{(int)text[bad]:X4} at position {bad + 1} that cannot be drawn; the "
                + $"characters are {SpecText.Allowed}.";
    }

    private PerAxis RequirePair(PerAxis value, string path, string name) =>
        value.IsUniform
            ? Require(value.X, path, name)
            : new PerAxis(Require(value.X, $"{path}[0]", name), Require(value.Y, $"{path}[1]", name));

    // Adding zero turns a negative zero into a positive one, so that equal specs have equal digests.
    private double Require(double value, string path, string name) =>
        ProblemOf(value, path) is { } problem
            ? throw new ArgumentOutOfRangeException(name, value, problem)
            : value + 0.0;

    private void RequireCount<T>(IReadOnlyList<T> values, string name)
    {
        ArgumentNullException.ThrowIfNull(values, name);
        if (ProblemOfCount(values.Count, Path) is { } problem)
            throw new ArgumentException(problem, name);
    }
}
