using System.Text;
using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Tests;

public class CaliperCommandTests
{
    private static readonly string[] First =
    [
        "caliper",
        "add",
        "RECORD",
        "10.01",
        "10.01",
        "10.02",
        "--jaw",
        "outside",
        "--gauge",
        "10",
        "--date",
        "2026-11-02",
    ];

    private static CliRun Run(string record, params string[] words) =>
        CliRun.Of([.. words.Select(w => w == "RECORD" ? record : w)]);

    [Fact]
    public void ARecordIsBegunAndGrowsAndItsOldRowsStay()
    {
        using var folder = new TemporaryFolder();
        string record = folder["cal.caliper.csv"];
        CliRun begun = Run(record, [.. First, "--name", "cal", "--valid", "200"]);
        Assert.Equal(0, begun.ExitCode);
        Assert.Contains("3 readings added", begun.Error, StringComparison.Ordinal);
        string before = File.ReadAllText(record);
        Assert.StartsWith(
            "# caliper cal\n# valid 200\ndate,jaw,gauge,reading,part,person\n",
            before,
            StringComparison.Ordinal
        );
        CliRun more = Run(record, "caliper", "add", "RECORD", "20.025", "--jaw", "outside", "--gauge", "20", "--json");
        Assert.Equal(0, more.ExitCode);
        Assert.StartsWith(before, File.ReadAllText(record), StringComparison.Ordinal);
        // The mean of 0.0133 at 10 mm and 0.025 at 20 mm.
        JsonNode jaw = JsonNode.Parse(more.Out)!["result"]!["jaws"]![0]!;
        Assert.Equal((0.04 / 3 + 0.025) / 2, (double)jaw["constant"]!, 1e-6);
        Assert.Equal(2, (int)jaw["lengths"]!);
        CliRun shown = Run(record, "caliper", "show", "RECORD");
        Assert.Equal(0, shown.ExitCode);
        Assert.Contains("caliper cal", shown.Out, StringComparison.Ordinal);
    }

    /// <summary>A record that another program wrote keeps its byte order mark, its line ends, all its bytes.</summary>
    [Fact]
    public void EveryByteThatStandsInARecordStays()
    {
        using var folder = new TemporaryFolder();
        string record = folder["cal.caliper.csv"];
        byte[] before =
        [
            .. Encoding.UTF8.Preamble,
            .. Encoding.UTF8.GetBytes("date,jaw,gauge,reading,part,person\r\n2026-11-02,outside,5,5.01,,\r\n# Ü"),
        ];
        File.WriteAllBytes(record, before);
        CliRun run = Run(record, First);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("it holds 4", run.Error, StringComparison.Ordinal);
        byte[] after = File.ReadAllBytes(record);
        Assert.Equal(before, after[..before.Length]);
        Assert.Equal(
            "\n2026-11-02,outside,10,10.01,,\n2026-11-02,outside,10,10.01,,\n2026-11-02,outside,10,10.02,,\n",
            Encoding.UTF8.GetString(after[before.Length..])
        );
    }

    /// <summary>Two people at two computers: no reading is lost, whoever begins the record.</summary>
    [Fact]
    public void ReadingsThatAreAddedAtOnceAllArrive()
    {
        using var folder = new TemporaryFolder();
        string record = folder["cal.caliper.csv"];
        Parallel.For(0, 12, i => Assert.Equal(0, Run(record, First).ExitCode));
        string[] lines = File.ReadAllLines(record);
        Assert.Equal(2 + 36, lines.Length);
        Assert.Single(lines, l => l.StartsWith("date,", StringComparison.Ordinal));
    }

    [Fact]
    public void PersonsAndPartsMakeAStudy()
    {
        using var folder = new TemporaryFolder();
        string record = folder["cal.caliper.csv"];
        foreach (string person in new[] { "Ada", "Ben" })
        foreach ((string part, string size) in new[] { ("peg", "8.02"), ("box", "11.24") })
            Assert.Equal(
                0,
                Run(
                    record,
                    "caliper",
                    "add",
                    "RECORD",
                    size,
                    size,
                    "--jaw",
                    "outside",
                    "--part",
                    part,
                    "--person",
                    person
                ).ExitCode
            );
        Assert.Contains(
            "2 parts, 2 persons, 2 rounds",
            Run(record, "caliper", "show", "RECORD").Out,
            StringComparison.Ordinal
        );
        // A reading more for one of them, and it is said what the study lacks.
        Run(record, "caliper", "add", "RECORD", "8.03", "--jaw", "outside", "--part", "peg", "--person", "Ada");
        Assert.Contains(
            "so far peg by Ada 3, box by Ada 2, peg by Ben 2, box by Ben 2",
            Run(record, "caliper", "show", "RECORD").Out,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("decimal point", "10,01", "--jaw", "outside", "--gauge", "10")]
    [InlineData("jaw is", "10.01", "--jaw", "teeth", "--gauge", "10")]
    [InlineData("--gauge MM", "10.01", "--jaw", "outside")]
    [InlineData("--gauge MM", "10.01", "--jaw", "outside", "--gauge", "10", "--part", "peg")]
    [InlineData("0.5 mm", "101", "--jaw", "outside", "--gauge", "10")]
    [InlineData("0.5 mm", "9.49", "--jaw", "outside", "--gauge", "10")]
    [InlineData("date is", "10.01", "--jaw", "outside", "--gauge", "10", "--date", "yesterday")]
    [InlineData("comma", "10.01", "--jaw", "outside", "--part", "peg,left")]
    [InlineData("formula", "10.01", "--jaw", "outside", "--part", "=1+1")]
    [InlineData("formula", "10.01", "--jaw", "outside", "--part", "peg", "--person", " @Ada")]
    [InlineData("name and validity", "10.01", "--jaw", "outside", "--gauge", "10", "--name", "other")]
    [InlineData("--jaw", "10.01", "--gauge", "10")]
    public void ASlipAddsNothing(string about, params string[] more)
    {
        using var folder = new TemporaryFolder();
        string record = folder["cal.caliper.csv"];
        Run(record, First);
        string before = File.ReadAllText(record);
        CliRun run = Run(record, ["caliper", "add", "RECORD", .. more]);
        Assert.Equal((2, ""), (run.ExitCode, run.Out));
        Assert.Contains(about, run.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(record));
    }

    [Fact]
    public void ARecordThatCannotBeReadIsLeftAsItIs()
    {
        using var folder = new TemporaryFolder();
        string record = folder["cal.caliper.csv"];
        File.WriteAllText(record, "not a record");
        CliRun run = Run(record, First);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("header", run.Error, StringComparison.Ordinal);
        Assert.Equal("not a record", File.ReadAllText(record));
    }
}
