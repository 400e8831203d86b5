using System.Text.RegularExpressions;

namespace CalibGeom.Features.Tests.House;

/// <summary>One verb a deed: the public surface has no second word for what DEVELOPERS.md names.</summary>
public partial class VerbTests
{
    /// <summary>Words that methods do not begin with, and the one that is said instead.</summary>
    private static readonly Dictionary<string, string> Instead = new(StringComparer.Ordinal)
    {
        ["Load"] = "Read",
        ["Import"] = "Read",
        ["Fetch"] = "Read",
        ["Scan"] = "Read",
        ["Decode"] = "Read",
        ["Deserialize"] = "Read",
        ["Save"] = "Write",
        ["Store"] = "Write",
        ["Export"] = "Write",
        ["Emit"] = "Write",
        ["Encode"] = "Write",
        ["Serialize"] = "Write",
        ["Make"] = "Of",
        ["Create"] = "Of",
        ["Build"] = "Of",
        ["New"] = "Of",
        ["From"] = "Of",
        ["Learn"] = "Of",
        ["Get"] = "a noun",
        ["Compute"] = "a noun",
        ["Calculate"] = "a noun",
        ["Measure"] = "a noun",
        ["Determine"] = "a noun",
        ["Evaluate"] = "a noun",
        ["Estimate"] = "a noun",
        ["Examine"] = "Run",
        ["Analyse"] = "Run",
        ["Analyze"] = "Run",
        ["Inspect"] = "Run",
        ["Advise"] = "Run",
        ["Execute"] = "Run",
        ["Perform"] = "Run",
        ["Process"] = "Run",
        ["Start"] = "Run",
        ["Verify"] = "Check",
        ["Validate"] = "Check",
        ["Ensure"] = "Require",
        ["Assert"] = "Require",
        ["Convert"] = "To",
        ["As"] = "To",
        ["Render"] = "Draw",
        ["Paint"] = "Draw",
        ["Plot"] = "Draw",
        ["Lookup"] = "Find",
        ["Search"] = "Find",
        ["Seek"] = "Find",
        ["Merge"] = "Join",
        ["Combine"] = "Join",
        ["Concat"] = "Join",
    };

    /// <summary>What .NET itself calls so, and numbers of a unit.</summary>
    private static readonly string[] Allowed =
    [
        "FromMillimetres",
        "FromDouble",
        "GetEnumerator",
        "GetHashCode",
        "AsSpan",
        "Seek",
    ];

    private static readonly IReadOnlyList<SourceFile> Surfaces = SourceFile.Under("src", "PublicAPI.*.txt");

    [Fact]
    public void ADeedHasOneVerb()
    {
        Assert.True(Surfaces.Sum(s => s.Lines.Count(l => MethodOf(l) is not null)) > 400);
        Assert.Empty(
            from surface in Surfaces
            from line in surface.Lines
            let method = MethodOf(line)
            where method is not null && !Allowed.Contains(method) && Instead.ContainsKey(Verb(method))
            select $"{surface.Folder}: {method} should begin with {Instead[Verb(method)]}"
        );
    }

    [Theory]
    [InlineData("static CalibGeom.Formats.MeshFile.Load(string! path) -> CalibGeom.Formats.MeshFile!", "Load")]
    [InlineData("CalibGeom.Features.ValueList<T>.Join<U>(U other) -> void", "Join")]
    [InlineData("CalibGeom.Planar.Rect.Rect(double a) -> void", null)]
    [InlineData("CalibGeom.Planar.Rect.Width.get -> double", null)]
    [InlineData("override CalibGeom.Planar.Rect.ToString() -> string!", "ToString")]
    public void AMethodIsFoundInALineOfTheSurface(string line, string? method) => Assert.Equal(method, MethodOf(line));

    [Theory]
    [InlineData("LoadAll", "Load")]
    [InlineData("Loader", "Loader")]
    [InlineData("Of95", "Of")]
    public void AVerbIsTheFirstWord(string method, string verb) => Assert.Equal(verb, Verb(method));

    [Fact]
    public void TheVerbsThatAreSaidStandInDevelopers()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "DEVELOPERS.md"));
        Assert.All(
            Instead.Values.Where(v => v != "a noun").Distinct(),
            verb => Assert.Contains($"| `{verb}`", page, StringComparison.Ordinal)
        );
    }

    /// <summary>The name of the method that a line declares; null for constructors, properties and types.</summary>
    private static string? MethodOf(string line) =>
        MethodLine().Match(line) is { Success: true } m && m.Groups["type"].Value != m.Groups["name"].Value
            ? m.Groups["name"].Value
            : null;

    private static string Verb(string method) => FirstWord().Match(method).Value;

    [GeneratedRegex(@"^~?(?:[a-z]+ )*(?:\w+\.)*(?<type>\w+)(?:<[^>]*>)?\.(?<name>[A-Z]\w*)(?:<[^>]*>)?\(")]
    private static partial Regex MethodLine();

    [GeneratedRegex("^[A-Z][a-z]*")]
    private static partial Regex FirstWord();
}
