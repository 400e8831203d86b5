using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Tests.Guides;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>Every command line in the README is run, in order, in one directory.</summary>
[Collection(CurrentDirectory.Name)]
public class ReadmeCommandTests
{
    [Fact]
    public void EveryCommandLineOfTheReadmeWorks()
    {
        GuideLine[] lines = [.. GuidePage.Read("README.md").Lines];
        Assert.True(lines.Length >= 15);
        using var folder = new TemporaryFolder();
        DemoParts.WriteHolder(folder["holder.stl"], -26, 24);
        RepositoryFile.RequireHolds("docs/samples/holder.stl", File.ReadAllBytes(folder["holder.stl"]));
        CurrentDirectory.Within(
            folder,
            () =>
            {
                foreach (GuideLine line in lines)
                    Run(line.Text, folder);
                OtherDigestsAreRefused();
            }
        );
        string[] named =
        [
            "standard.stl",
            "standard.features.csv",
            "demo-grey.stl",
            "demo-grey.features.csv",
            "demo-grey.object.json",
            "bench.csv",
            "print1.csv",
            "demo-grey.jsonl",
            "plate.object.json",
            "plate.readings.csv",
            "plate.stl",
            "plate.features.csv",
            "plate.svg",
            "limit.stl",
        ];
        RequireOneObject(folder);
        Assert.Subset(Directory.GetFiles(folder.Root).Select(f => Path.GetFileName(f)).ToHashSet(), named.ToHashSet());
    }

    /// <summary>Sheet, readings and log speak of the object that was made, and of no preset.</summary>
    private static void RequireOneObject(TemporaryFolder folder)
    {
        string digest = ObjectFileJson.Parse(File.ReadAllText(folder["demo-grey.object.json"]), "object").Digest;
        Assert.DoesNotContain(Presets.All, p => SpecDigest.Of(p.Spec) == digest);
        foreach (string sheet in new[] { "bench.csv", "print1.csv", "demo-grey.features.csv" })
            Assert.StartsWith($"# digest {digest}\n", File.ReadAllText(folder[sheet]), StringComparison.Ordinal);
        Assert.Equal(digest, Assert.Single(TrialLog.Read(folder["demo-grey.jsonl"]).Entries).Trial.Digest);
        string plate = ObjectFileJson.Parse(File.ReadAllText(folder["plate.object.json"]), "object").Digest;
        Assert.StartsWith(
            $"# digest {plate}\n",
            File.ReadAllText(folder["plate.readings.csv"]),
            StringComparison.Ordinal
        );
    }

    /// <summary>Another digest anywhere on the way ends the next step.</summary>
    private static void OtherDigestsAreRefused()
    {
        (string File, string[] Next)[] all =
        [
            ("print1.csv", ["predict", "print1.csv"]),
            (
                "print1.csv",
                ["log", "add", "print1.csv", "--to", "demo-grey.jsonl", "--time", "2.5", "--rest", "0.5", "--again"]
            ),
            ("plate.readings.csv", ["predict", "plate.readings.csv"]),
            ("demo-grey.object.json", ["readings", "--object", "demo-grey.object.json"]),
            ("demo-grey.object.json", ["predict", "print1.csv"]),
            ("plate.object.json", ["inspect", "plate.stl", "--against"]),
        ];
        foreach ((string file, string[] next) in all)
        {
            string before = File.ReadAllText(file);
            int at = before.IndexOf("digest", StringComparison.Ordinal) + "digest".Length;
            at += before[at..].TakeWhile(c => !char.IsAsciiHexDigitLower(c)).Count();
            File.WriteAllText(file, before.Remove(at, 1).Insert(at, before[at] == '0' ? "1" : "0"));
            CliRun run = CliRun.Of(next);
            File.WriteAllText(file, before);
            Assert.True(run.ExitCode == ExitCode.BadUse, $"{file}: {string.Join(' ', next)}: {run.ExitCode} {run.Out}");
            Assert.Contains("digest", run.Error, StringComparison.Ordinal);
        }
    }

    private static void Run(string line, TemporaryFolder folder)
    {
        string[] sides = line.Split(" > ");
        CliRun run = CliRun.Of(GuideWords.Of(sides[0]));
        Assert.True(run.ExitCode == ExitCode.Done, $"{line}: {run.ExitCode} {run.Error}");
        if (sides.Length == 2)
            folder.Write(sides[1], run.Out);
    }
}
