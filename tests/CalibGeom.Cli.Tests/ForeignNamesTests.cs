using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>Names with markup, quotes, formulas and marks of direction stay text wherever they are written.</summary>
public class ForeignNamesTests
{
    private const string Resin = "=1+1</script>\"'&\u202Egnp\u001b[2J\\",
        Readings = "# state dry\n# material rigid\nfeature,value\nbox1.outside.x,8.02\nbox2.inside.x,8.08\n";

    [Fact]
    public void TheyStayTextInALogAndInWhatIsSaidOfIt()
    {
        using var folder = new TemporaryFolder();
        string log = folder["log.jsonl"];
        string[] settings = "--time 2.5 --rest 1 --printer bench --object standard --json".Split(' ');
        CliRun added = CliRun.Of([
            "log",
            "add",
            folder.Write("bench.csv", Readings),
            "--to",
            log,
            "--resin",
            Resin,
            .. settings,
        ]);
        Assert.True(added.ExitCode == ExitCode.Done, added.Error);
        Assert.Equal(Resin, TrialLog.Read(log).Trials.Single().Conditions.Resin);
        Assert.Single(File.ReadAllLines(log));
        Assert.Equal(Resin, Named(added, "trial"));
        Assert.Equal(Resin, Named(CliRun.Of("log", "show", log, "--json"), "trials", "0", "trial"));
        foreach (CliRun run in new[] { added, CliRun.Of("log", "show", log), CliRun.Of("tune", log) })
        {
            Assert.Equal(ExitCode.Done, run.ExitCode);
            Assert.DoesNotMatch("[\u202e\u001b]", run.Out + run.Error);
        }
    }

    [Fact]
    public void TheyStayTextInAReport()
    {
        using var folder = new TemporaryFolder();
        string log = folder.Write("log.jsonl", TrialLog.ToLine(Read(Resin)) + "\n");
        CliRun run = CliRun.Of("tune", log, "--report", folder["a.html"], "--card", folder["a.svg"]);
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        foreach (string file in new[] { "a.html", "a.svg" })
        {
            string text = File.ReadAllText(folder[file]);
            Assert.DoesNotContain("</script>", text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain('\u001b', text);
            Assert.Contains("=1+1&lt;/script", text, StringComparison.Ordinal);
        }
    }

    private static Trial Read(string resin) =>
        new(new ExposureSettings(2.5, 1), new TrialConditions(0.05, resin, "bench"))
        {
            GrowthX = new GrowthReading(0.01, 0.004),
            Joints = [new JointOutcome("joint1", 0.05)],
        };

    private static string? Named(CliRun run, params string[] path)
    {
        JsonNode node = JsonNode.Parse(run.Out)!["result"]!;
        foreach (string step in path)
            node = node is JsonArray list ? list[0]! : node[step]!;
        return (string?)node["resin"];
    }
}
