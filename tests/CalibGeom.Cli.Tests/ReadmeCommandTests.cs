using System.Text.RegularExpressions;
using CalibGeom.Cli.Shared;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>Every command line in the README is run, in order, in one directory.</summary>
[Collection(CurrentDirectory.Name)]
public partial class ReadmeCommandTests
{
    [Fact]
    public void EveryCommandLineOfTheReadmeWorks()
    {
        string[] lines = File.ReadAllLines(Path.Combine(Repository.Root, "README.md"))
            .Select(Command)
            .OfType<string>()
            .ToArray();
        Assert.True(lines.Length >= 5);
        using var folder = new TemporaryFolder();
        DemoParts.WriteHolder(folder["holder.stl"], -26, 24);
        RepositoryFile.RequireHolds("docs/samples/holder.stl", File.ReadAllBytes(folder["holder.stl"]));
        string before = Directory.GetCurrentDirectory();
        try
        {
            Directory.SetCurrentDirectory(folder.Root);
            foreach (string line in lines)
                Run(line, folder);
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }
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
        Assert.Equal(digest, Assert.Single(TrialLog.ReadFile(folder["demo-grey.jsonl"]).Trials).Digest);
        string plate = ObjectFileJson.Parse(File.ReadAllText(folder["plate.object.json"]), "object").Digest;
        Assert.StartsWith(
            $"# digest {plate}\n",
            File.ReadAllText(folder["plate.readings.csv"]),
            StringComparison.Ordinal
        );
    }

    private static void Run(string line, TemporaryFolder folder)
    {
        string[] sides = line.Split(" > ");
        string[] args = Words()
            .Matches(sides[0])
            .Select(m => m.Value.Replace("\"", "", StringComparison.Ordinal))
            .ToArray();
        CliRun run = CliRun.Of(args);
        Assert.True(run.ExitCode == ExitCode.Done, $"{line}: {run.ExitCode} {run.Error}");
        if (sides.Length == 2)
            folder.Write(sides[1], run.Out);
    }

    private static string? Command(string line)
    {
        foreach (string start in new[] { "calibgeom ", "dotnet run --project src/CalibGeom.Cli -- " })
            if (line.StartsWith(start, StringComparison.Ordinal))
                return line[start.Length..];
        return null;
    }

    [GeneratedRegex("""(?:[^\s"]|"[^"]*")+""")]
    private static partial Regex Words();
}
