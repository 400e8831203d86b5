using System.Text;
using System.Text.RegularExpressions;

namespace CalibGeom.Features.Tests.House;

/// <summary>
/// docs/findings.md lists every id that a finding can have, as the sources spell them; <c>CALIBGEOM_UPDATE=1</c> writes
/// it anew. A program may rely on an id, so one that goes must be seen in review.
/// </summary>
public partial class FindingIdTests
{
    private const string Page = "docs/findings.md";

    /// <summary>Words with hyphens that are no ids of findings.</summary>
    private static readonly string[] OtherWords =
    [
        "post-cured",
        "not-enough-data",
        "not-seen-to-move",
        InputIds.ObjectFile,
        InputIds.FeatureTable,
        InputIds.CaliperRecord,
    ];

    /// <summary>Ids of one word, which sources do not tell from other words, and where they are made.</summary>
    private static readonly (string Id, string Folder)[] OneWord =
    [
        ("bridge", "Inspection/Layers/LayerFindings"),
        ("bridge", "TestObjects/Rules/"),
        ("caliper", "Tuning/Words/"),
        ("design", "Tuning/Words/"),
        ("island", "Inspection/Layers/LayerFindings"),
        ("layers", "TestObjects/Rules/"),
        ("loose", "Tuning/Words/"),
        ("next", "Tuning/Words/"),
        ("overhang", "Inspection/Layers/LayerFindings"),
        ("overhang", "TestObjects/Rules/"),
        ("pixels", "TestObjects/Rules/"),
        ("pixels", "TestObjects/Parts/WallFan/"),
        ("pixels", "TestObjects/Parts/Columns/ColumnRules"),
        ("rest", "Tuning/Words/"),
        ("scale", "Tuning/Words/"),
        ("temperature", "Tuning/Words/"),
        ("tight", "Tuning/Words/"),
        ("unreadable", "Cli/Inspect/"),
    ];

    private static readonly (string Folder, string Heading)[] Rooms =
    [
        ("CalibGeom/TestObjects/Comparison", "A mesh beside its object (`inspect --object`)"),
        ("CalibGeom/TestObjects", "The design of a test object (`make`)"),
        ("CalibGeom/Plates", "A plate (`place`)"),
        ("CalibGeom/", "Any mesh (`inspect`)"),
        ("CalibGeom.Verification/Logs", "A trial that is logged (`log add`)"),
        ("CalibGeom.Verification/Tuning", "The next settings (`tune`)"),
        ("CalibGeom.Verification/Trends", "Prints over time (`trend`)"),
        ("CalibGeom.Verification/Maps", "Coupons of one print by place (`map`)"),
        ("CalibGeom.Verification/", "Readings of one print (`predict`)"),
        ("CalibGeom.Light/", "A print that is played (`simulate`)"),
        ("CalibGeom.Cli/", "The command line alone"),
    ];

    [Fact]
    public void ThePageListsEveryId() => RepositoryFile.RequireHolds(Page, Encoding.UTF8.GetBytes(Text()));

    [Fact]
    public void EveryIdOfOneWordIsSpeltWhereItIsSaidToBe() =>
        Assert.All(
            OneWord,
            one => Assert.Contains(Sources(), path => IdsOf(path).Contains(one.Id) && IsIn(path, one.Folder))
        );

    private static string Text()
    {
        var text = new StringBuilder(
            """
            # Ids of findings and errors

            What a check finds carries an id (`rule` in JSON, `Finding.Rule` in C#) that stays what it is between versions of the same first
            number, so that a program can act on it. What was found, the limit and what to do about it stand in the finding itself: `message`, `value`,
            `limit`, `unit`, `remedy`; `subject` and `axis` say about what, `places` where on a mesh. The severity is `error`, `warning` or `note`. Design
            rules are explained in [test-object.md](test-object.md), checks of meshes in [inspect.md](inspect.md), of readings in [predict.md](predict.md).

            This page is made from the sources by a test.

            """.ReplaceLineEndings("\n")
        );
        var ids = Sources()
            .SelectMany(path => IdsOf(path).Select(id => (id, Heading: HeadingOf(path))))
            .ToLookup(p => p.Heading, p => p.id);
        foreach ((_, string heading) in Rooms)
        {
            text.Append('\n').Append("## ").Append(heading).Append("\n\n");
            foreach (string id in ids[heading].Distinct().Order(StringComparer.Ordinal))
                text.Append("* `").Append(id).Append("`\n");
        }
        text.Append(
            """

            ## Input that cannot be used

            `InputException.Id` says of what kind the input is, one id a kind; what is wrong with it, and where, stand in `Sentence` and `Place` ([web.md](web.md)).

            | id | the input |
            |---|---|

            """.ReplaceLineEndings("\n")
        );
        string source = File.ReadAllText(Path.Combine(Repository.Root, "src", "CalibGeom.Features", "InputIds.cs"));
        MatchCollection kinds = Kind().Matches(source.ReplaceLineEndings("\n"));
        Assert.Equal(typeof(InputIds).GetFields().Length, kinds.Count);
        foreach (Match kind in kinds)
        {
            string what = Break().Replace(kind.Groups[1].Value, " ").Trim();
            text.Append("| `").Append(kind.Groups[2].Value).Append("` | ").Append(what).Append(" |\n");
        }
        return text.ToString();
    }

    [GeneratedRegex(@"\s*\n\s*/// ?")]
    private static partial Regex Break();

    private static IEnumerable<string> Sources() =>
        Rooms
            .Select(r => r.Folder.Split('/')[0])
            .Distinct()
            .SelectMany(project =>
                Directory.GetFiles(Path.Combine(Repository.Root, "src", project), "*.cs", SearchOption.AllDirectories)
            )
            .Where(path => !path.Replace('\\', '/').Contains("/obj/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    private static string HeadingOf(string path) =>
        Rooms.First(r => path.Replace('\\', '/').Contains("/src/" + r.Folder, StringComparison.Ordinal)).Heading;

    private static IEnumerable<string> IdsOf(string path) =>
        Literal()
            .Matches(File.ReadAllText(path))
            .Select(m => m.Groups[1].Value)
            .Where(word =>
                !OtherWords.Contains(word) && (word.Contains('-', StringComparison.Ordinal) || IsId(path, word))
            );

    private static bool IsId(string path, string word) => OneWord.Any(o => o.Id == word && IsIn(path, o.Folder));

    private static bool IsIn(string path, string folder) =>
        path.Replace('\\', '/').Contains(folder, StringComparison.Ordinal);

    [GeneratedRegex("""<summary>((?:(?!</summary>)[\s\S])*)</summary>\n    public const string \w+ = "([a-z-]+)";""")]
    private static partial Regex Kind();

    [GeneratedRegex("\"([a-z]+(?:-[a-z]+)*)\"")]
    private static partial Regex Literal();
}
