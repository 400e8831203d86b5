using System.Text.RegularExpressions;
using CalibGeom.Cli.Shared;

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
            "witness.3mf",
            "plate.stl",
            "plate.features.csv",
            "plate.svg",
            "limit.stl",
        ];
        Assert.Subset(Directory.GetFiles(folder.Root).Select(f => Path.GetFileName(f)).ToHashSet(), named.ToHashSet());
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
