using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>A caliper record that readings name counts in every command that reads them.</summary>
public class CaliperRecordUseTests
{
    private const string Head = "# state dry\n# material rigid\n# instrument cal resolution=0.01 mpe=0.02",
        Columns = "\nfeature,value,unit,instrument\n",
        Boxes = "box1.outside.x,8.04,mm,cal\nbox2.outside.x,11.24,mm,cal\n",
        Spans = "span.x,40.04,mm,cal\nbox3.outside.x,16.04,mm,cal\n";

    // Reads 0.03 mm too much at every length, last on 2 November.
    private const string Record =
        "date,jaw,gauge,reading,part,person\n2026-11-02,outside,10,10.03,,\n2026-11-02,outside,20,20.03,,\n";

    private static readonly DateOnly Soon = new(2026, 12, 1),
        Late = new(2028, 1, 1);

    [Fact]
    public void TheLogTakesTheCalipersErrorOff()
    {
        using var folder = new TemporaryFolder();
        Trial without = Added(folder, Soon, "", out _),
            with = Added(folder, Soon, " record=cal.caliper.csv", out JsonNode said);
        // Two gauges say 0.03 mm. Against a permissible error of 0.02 (0.0100 of it the same at every length, 0.0058
        // along the scale) and a scatter of 0.008 that is an error of 0.020 mm, half of it at an edge:
        // 0.03 x 0.0100^2 / (0.0100^2 + (0.0058^2 + 0.008^2) / 2).
        Assert.Equal(without.GrowthX!.Value - 0.010, with.GrowthX!.Value, 0.001);
        Assert.True(with.GrowthX.Bias < 0.8 * without.GrowthX.Bias);
        Assert.DoesNotContain("caliper-record-old", said.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ARecordOutOfDateIsSaidOnTheDayItIs()
    {
        using var folder = new TemporaryFolder();
        Added(folder, Late, " record=cal.caliper.csv", out JsonNode said);
        Assert.Contains("caliper-record-old", said.ToJsonString(), StringComparison.Ordinal);
        string bench = folder["bench.csv"];
        foreach ((DateOnly day, bool old) in new[] { (Soon, false), (Late, true) })
        {
            CliRun run = CliRun.On(day, "predict", bench, "--object", "standard");
            Assert.Equal(old, run.Out.Contains("The caliper record is old", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void AGaugeThatWasReadOnceMoreMakesNoOtherPrint()
    {
        using var folder = new TemporaryFolder();
        string log = folder["log.jsonl"];
        Write(folder, " record=cal.caliper.csv");
        Assert.Equal(ExitCode.Done, Add(folder, Soon, log).ExitCode);
        File.AppendAllText(folder["cal.caliper.csv"], "2026-11-20,outside,10,10.02,,\n");
        CliRun again = Add(folder, Soon, log);
        Assert.Equal(ExitCode.BadUse, again.ExitCode);
        Assert.Contains("has these very readings", again.Error, StringComparison.Ordinal);
    }

    /// <summary>Two files of one print say what one file says: the gauges of their record count once.</summary>
    [Fact]
    public void GaugesCountOnceAlthoughTwoFilesNameThem()
    {
        using var folder = new TemporaryFolder();
        string head = Head + " record=cal.caliper.csv" + Columns;
        folder.Write("cal.caliper.csv", Record);
        folder.Write("all.csv", head + Boxes + Spans);
        folder.Write("a.csv", head + Boxes);
        folder.Write("b.csv", head + Spans);
        string[] more = ["--object", "standard", "--one-print", "--json"];
        JsonNode one = Result(CliRun.Of(["predict", folder["all.csv"], .. more])),
            two = Result(CliRun.Of(["predict", folder["a.csv"], folder["b.csv"], .. more]));
        Assert.True(JsonNode.DeepEquals(one, two), $"{one}\n{two}");
    }

    [Fact]
    public void ReadingsOfOnePrintThatNameTwoRecordsAreRefused()
    {
        using var folder = new TemporaryFolder();
        foreach (string day in new[] { "monday", "tuesday" })
        {
            Directory.CreateDirectory(folder[day]);
            folder.Write($"{day}/cal.caliper.csv", Record);
            folder.Write($"{day}/bench.csv", Head + " record=cal.caliper.csv" + Columns + Boxes);
        }
        string[] files = [folder["monday/bench.csv"], folder["tuesday/bench.csv"]];
        CliRun run = CliRun.Of(["predict", .. files, "--object", "standard", "--one-print"]);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("need one record", run.Error, StringComparison.Ordinal);
    }

    private static Trial Added(TemporaryFolder folder, DateOnly day, string record, out JsonNode said)
    {
        Write(folder, record);
        string log = folder[$"log{record.Length}.jsonl"];
        CliRun run = Add(folder, day, log);
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        said = JsonNode.Parse(run.Out)!["findings"]!;
        return TrialLog.Read(log).Trials.Single();
    }

    private static void Write(TemporaryFolder folder, string record)
    {
        folder.Write("cal.caliper.csv", Record);
        folder.Write("bench.csv", Head + record + Columns + Boxes + Spans);
    }

    private static CliRun Add(TemporaryFolder folder, DateOnly day, string log)
    {
        string[] settings = "--time 2.5 --rest 1 --resin Demo --printer bench --object standard --json".Split(' ');
        return CliRun.On(day, ["log", "add", folder["bench.csv"], .. settings, "--to", log]);
    }

    private static JsonNode Result(CliRun run)
    {
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        return JsonNode.Parse(run.Out)!["result"]!;
    }
}
