using System.CommandLine;
using System.CommandLine.Completions;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// <c>--object FILE|PRESET</c> and <c>--set NAME=VALUE</c>, which mean the same in every command: what the object is.
/// </summary>
internal sealed class ObjectOption
{
    internal const string Name = "--object";

    private readonly Option<string?> named;
    private readonly Option<string[]> set = new("--set")
    {
        Description =
            "Set one value of it, such as columns.height=10, nest.sizes=8,11.2 or slots=null; may be repeated.",
        HelpName = "NAME=VALUE",
    };

    /// <param name="without">What holds when it is not given, as the end of a sentence.</param>
    internal ObjectOption(string without)
    {
        named = new Option<string?>(Name)
        {
            Description =
                $"The object: a preset ({string.Join(", ", Presets.All.Select(p => p.Name))}), the .object.json beside a "
                + "mesh that was made, the mesh itself, a spec in JSON (what it leaves out is as in the preset standard) or "
                + "a .3mf that make has written; where no shape is needed also a table of features (.features.csv, "
                + $".features.json); - is a spec on standard input. Default: {without}.",
            HelpName = "FILE|PRESET",
        };
        named.CompletionSources.Add(_ => Presets.All.Select(p => p.Name));
        set.CompletionSources.Add(_ => SpecJson.ParameterNames.Select(n => n + "="));
    }

    internal void AddTo(Command command)
    {
        command.Options.Add(named);
        command.Options.Add(set);
    }

    /// <summary>Whether it was given.</summary>
    internal bool IsGiven(ParseResult parsed) => parsed.GetValue(named) is not null;

    /// <summary>Whether it takes standard input.</summary>
    internal bool TakesInput(ParseResult parsed) => parsed.GetValue(named) == "-";

    /// <summary>
    /// The ids of the object's features, to complete a word: of the one named, else of the only one here, else of the
    /// preset standard.
    /// </summary>
    internal IEnumerable<string> FeatureIds(CompletionContext context)
    {
        try
        {
            KnownObject known = context.ParseResult.GetValue(named) is { Length: > 0 } name and not "-"
                ? ObjectFinder.Read(name, [])
                : ObjectFinder.Read(ObjectFinder.OnlyFile(".") ?? "standard", []);
            return known.Features.Select(f => (string)f.Id).ToArray();
        }
        catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
        {
            return []; // A word that cannot be completed is no error.
        }
    }

    /// <summary>The path it names, or null.</summary>
    internal string? PathOf(ParseResult parsed) =>
        parsed.GetValue(named) is { } text && text != "-" && Presets.Find(text) is null ? text : null;

    /// <summary>The object that it names, else a preset.</summary>
    /// <exception cref="InputException">There is none, or it cannot be used.</exception>
    internal KnownObject Load(CommandIo io, ParseResult parsed, string preset) =>
        Load(io, parsed.GetValue(named) ?? preset, parsed.GetValue(set) ?? []);

    /// <summary>The spec that it names, else that of a preset.</summary>
    /// <exception cref="InputException">There is none, or it cannot be used.</exception>
    internal SpecSource Spec(CommandIo io, ParseResult parsed, string preset)
    {
        KnownObject known = Load(io, parsed, preset);
        return known.File is { } file
            ? new SpecSource(file.Name, file.Spec)
            : throw new InputException(
                InputIds.Option,
                $"{known.Name} is a table of features. Name the spec or object it was made from."
            );
    }

    /// <summary>The object that a mesh should be: the named one, else the one beside it.</summary>
    /// <exception cref="InputException">There is none, or it cannot be used.</exception>
    internal ObjectFile Against(CommandIo io, ParseResult parsed, string mesh)
    {
        KnownObject known = Load(io, parsed, mesh == "-" ? "standard" : mesh);
        return known.File
            ?? throw new InputException(
                InputIds.Option,
                $"{known.Name} is a table of features. Name the spec or object it was made from."
            );
    }

    /// <summary>The object that was printed: the named one, else the one whose digest the readings carry.</summary>
    /// <exception cref="InputException">There is none, or the readings are of another object.</exception>
    internal FoundObject Find(CommandIo io, ParseResult parsed, string? digest, IEnumerable<string> paths)
    {
        IReadOnlyList<string> assignments = parsed.GetValue(set) ?? [];
        if (parsed.GetValue(named) is { } name)
            return new FoundObject(Same(Load(io, name, assignments), name, digest), null);
        if (assignments.Count > 0)
            throw new InputException(
                InputIds.Option,
                $"--set changes an object that is not named. Name it too: {Name} FILE|PRESET."
            );
        if (digest is not null)
            return new FoundObject(ObjectFinder.Require(digest, [.. paths.Select(FolderOf), "."]), null);
        return new FoundObject(ObjectFinder.Read("standard", []), Assumed);
    }

    private static Finding Assumed { get; } =
        new(
            "nominals-assumed",
            Severity.Note,
            "",
            "Nothing says what was printed; nominal sizes are those of the preset standard.",
            $"Name it with {Name}, or keep the \"# digest\" line of the readings file."
        );

    private static KnownObject Load(CommandIo io, string name, IReadOnlyList<string> assignments)
    {
        if (name != "-")
        {
            if (WrongFile.KindOf(name) is InputKind.Readings or InputKind.Log or InputKind.Caliper)
                WrongFile.RequireNoOther(name, InputKind.Object);
            return ObjectFinder.Read(name, assignments);
        }
        using Stream input = io.OpenInput();
        return ObjectFinder.Read(input, ObjectFinder.StandardInput, assignments);
    }

    private static KnownObject Same(KnownObject known, string name, string? digest) =>
        digest is null || known.Digest is not { } own || own == digest
            ? known
            : throw new InputException(
                InputIds.Option,
                $"The readings are of another object: they name digest {digest}, but {name} has {own}. Name the object "
                    + "that was printed."
            );

    private static string FolderOf(string path) =>
        path == "-" || Path.GetDirectoryName(path) is not { Length: > 0 } folder ? "." : folder;
}
