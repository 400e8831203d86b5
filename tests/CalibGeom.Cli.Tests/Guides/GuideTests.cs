using System.Text.RegularExpressions;
using CalibGeom.Cli.Shared;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests.Guides;

/// <summary>
/// Every page of the guide is played from top to bottom in a folder that holds the samples and nothing else: each
/// command line works, prints what the page shows and draws the page's pictures, and what it leaves behind speaks of
/// the objects that were made.
/// </summary>
[Collection(CurrentDirectory.Name)]
public partial class GuideTests
{
    private static readonly string[] Paths =
    [
        "docs/drawing.md",
        "docs/family.md",
        "docs/first-print.md",
        "docs/getting-started.md",
        "docs/inspect.md",
        "docs/light.md",
        "docs/log.md",
        "docs/map.md",
        "docs/measuring.md",
        "docs/place.md",
        "docs/reading-results.md",
        "docs/recipes.md",
        "docs/test-object.md",
        "docs/trend.md",
        "docs/tune.md",
        "docs/worked-example-predict.md",
    ];

    public static TheoryData<string> Pages => [.. Paths];

    [Theory]
    [MemberData(nameof(Pages))]
    public void EveryLineOfThePageDoesWhatThePageSays(string path)
    {
        var page = GuidePage.Read(path);
        Assert.NotEmpty(page.Lines);
        using var folder = new TemporaryFolder();
        DemoSamples.Within(
            folder,
            () =>
            {
                foreach (GuideLine line in page.Lines)
                    Play(page, line);
                RequireKnownDigests(".");
            }
        );
        RequirePictures(page, folder);
    }

    [Fact]
    public void NoPageWithCommandsIsForgotten() =>
        Assert.Equal(
            Paths.Append("docs/worked-session-tune.md").Order(),
            Directory
                .GetFiles(Path.Combine(Repository.Root, "docs"), "*.md")
                .Select(p => "docs/" + Path.GetFileName(p))
                .Where(p => GuidePage.Read(p).Lines.Count > 0)
                .Order()
        );

    [Fact]
    public void SamplesAreWhatTheDemoWorkshopHas()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteHolder(folder["holder.stl"], -26, 24);
        DemoParts.WriteTray(folder["tray.stl"], -38, -12);
        folder.Write("demo-grey.jsonl", DemoLogs.Watched(0.04));
        folder.Write("plate.jsonl", DemoLogs.Plate(0.4));
        folder.Write("bench.csv", Block("docs/worked-example-predict.md"));
        folder.Write("cal.caliper.csv", Block("docs/measuring.md"));
        folder.Write("monday.csv", Simulated(1));
        folder.Write("tuesday.csv", Simulated(2));
        foreach (string file in Directory.GetFiles(folder.Root))
            RepositoryFile.RequireHolds($"{DemoSamples.Folder}/{Path.GetFileName(file)}", File.ReadAllBytes(file));
        Assert.Equal(
            Directory.GetFiles(folder.Root).Select(Path.GetFileName).Order(),
            Directory.GetFiles(Path.Combine(Repository.Root, DemoSamples.Folder)).Select(Path.GetFileName).Order()
        );
    }

    private static string Simulated(int seed) =>
        CliRun
            .Of($"simulate --dp 0.12 --ec 4 --irradiance 4 --blur 0.02 --time 2.5 --rest 0.5 --seed {seed}".Split(' '))
            .Out;

    private static string Block(string page)
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, page)).ReplaceLineEndings("\n");
        int from = text.IndexOf("```csv\n", StringComparison.Ordinal) + 7;
        return text[from..text.IndexOf("```", from, StringComparison.Ordinal)];
    }

    private static void Play(GuidePage page, GuideLine line)
    {
        CliRun run = CliRun.Of(GuideWords.Of(line.Text));
        Assert.True(run.ExitCode is ExitCode.Done or ExitCode.Finding, $"{page.Path}: {line.Text}\n{run.Error}");
        if (line.Shown is not { } shown)
            return;
        string said = run.Out.ReplaceLineEndings("\n").TrimEnd();
        string path = Path.Combine(Repository.Root, page.Path);
        if (Repository.Updating && said != shown)
            File.WriteAllText(
                path,
                File.ReadAllText(path).ReplaceLineEndings("\n").Replace(shown, said, StringComparison.Ordinal)
            );
        else
            Assert.Equal(shown, said);
    }

    /// <summary>Pictures that the page shows under the name of a file that its commands drew.</summary>
    private static void RequirePictures(GuidePage page, TemporaryFolder folder)
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, page.Path));
        foreach (string name in Shown().Matches(text).Select(m => m.Groups[1].Value).Distinct())
            if (File.Exists(folder[name]) && name.EndsWith(".svg", StringComparison.Ordinal))
                RepositoryFile.RequireHolds($"docs/pictures/{name}", File.ReadAllBytes(folder[name]));
    }

    /// <summary>Readings, tables and logs name an object that stands beside them, or a preset.</summary>
    private static void RequireKnownDigests(string folder)
    {
        HashSet<string> known =
        [
            .. Presets.All.Select(p => SpecDigest.Of(p.Spec)),
            .. Directory
                .GetFiles(folder, "*" + ObjectFile.Extension)
                .Select(f => ObjectFileJson.Parse(File.ReadAllText(f), f).Digest),
        ];
        foreach (string file in Directory.GetFiles(folder, "*.csv").Concat(Directory.GetFiles(folder, "bench.jsonl")))
        foreach (Match digest in Digest().Matches(File.ReadAllText(file)))
            Assert.Contains(digest.Groups[1].Value, known);
    }

    [GeneratedRegex("""\(pictures/([\w.-]+)\)""")]
    private static partial Regex Shown();

    [GeneratedRegex("""(?:^# digest |"digest":")([0-9a-f]{16})""", RegexOptions.Multiline)]
    private static partial Regex Digest();
}
