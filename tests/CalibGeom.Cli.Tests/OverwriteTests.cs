using System.CommandLine;
using System.Text.RegularExpressions;
using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Outputs;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// One rule for every command: never over a file that is read in the same run, and over a file that this tool did not
/// write, or that holds what was measured, only with <c>--force</c>.
/// </summary>
[Collection(CurrentDirectory.Name)]
public class OverwriteTests
{
    // Each command with all it can write, in a folder where the demo workshop's files lie.
    private const string Simulate = "simulate --object witness --dp 0.12 --ec 4 --irradiance 4 --time 2.5";

    public static TheoryData<string, string> Commands =>
        new()
        {
            {
                "make --object witness --sheet new.html --picture new.svg -o new.stl",
                "new.stl new.features.csv new.object.json new.html new.svg"
            },
            { "make --object witness --picture new.png -o new.3mf", "new.3mf new.png" },
            { "make --object witness --picture new.pdf -o new.obj", "new.obj new.pdf" },
            {
                "make --object witness --sweep columns.lean=0,5 --shard 2/2 -o new-{n}.stl",
                "new-2.stl index.2-of-2.csv index.2-of-2.json index.2-of-2.journal.jsonl"
            },
            { "readings --object witness -o new.csv", "new.csv" },
            { "readings --object witness --sheet new.html", "new.html" },
            { "draw --object witness -o new.svg", "new.svg" },
            { "draw --object witness -o new.pdf", "new.pdf" },
            { "draw --object witness --view corner -o new.png", "new.png" },
            { Simulate + " -o new.csv", "new.csv" },
            {
                "place holder.stl --plate 150x90 --picture new.svg -o new.stl",
                "new.stl new.features.csv new.object.json new.svg"
            },
            { "place holder.stl --plate 150x90 -o new.3mf", "new.3mf" },
            { "predict bench.csv --report new.html", "new.html" },
            { "tune demo-grey.jsonl --plot new.svg --report new.html --card new.png", "new.svg new.html new.png" },
            { "trend demo-grey.jsonl --plot new.svg", "new.svg" },
            { "map plate.jsonl --plot new.svg --grid new.csv", "new.svg new.csv" },
        };

    [Theory]
    [MemberData(nameof(Commands))]
    public void WhatThisToolWroteMayBeWrittenAgainAndWhatOthersWroteOnlyWithForce(string line, string written) =>
        Within(() =>
        {
            string[] args = line.Split(' ');
            Done(args);
            string[] files = written.Split(' ');
            Assert.All(files, f => Assert.Null(OwnFile.Refusal(f)));
            byte[][] ours = [.. files.Select(File.ReadAllBytes)];
            for (int i = 0; i < files.Length; i++)
            {
                File.WriteAllText(files[i], "not from here");
                CliRun run = CliRun.Of(args);
                Assert.Equal(ExitCode.BadUse, run.ExitCode);
                Assert.Contains(files[i], run.Error, StringComparison.Ordinal);
                Assert.Contains("--force", run.Error, StringComparison.Ordinal);
                Assert.Equal("not from here", File.ReadAllText(files[i]));
                File.WriteAllBytes(files[i], ours[i]);
            }
            foreach (string file in files)
                File.WriteAllText(file, "not from here");
            Done([.. args, "--force"]);
            Assert.Equal(ours, files.Select(File.ReadAllBytes));
        });

    [Theory]
    [InlineData("make --object work.features.csv -o work.stl", "work.features.csv")]
    [InlineData("make --object work.json -o work.json", "work.json")]
    [InlineData("make --object work.object.json -o work.stl", "work.object.json")]
    [InlineData("make --object work.3mf -o work.3mf", "work.3mf")]
    [InlineData("readings --object work.json -o work.json", "work.json")]
    [InlineData(Simulate + " --object work.json -o work.json", "work.json")]
    [InlineData("place holder.stl --plate 150x90 -o holder.stl", "holder.stl")]
    [InlineData("place folder/holder.stl --plate 150x90 -o real/holder.stl", "real/holder.stl")]
    [InlineData("predict bench.csv --report bench.csv", "bench.csv")]
    [InlineData("tune demo-grey.jsonl --plot demo-grey.jsonl", "demo-grey.jsonl")]
    [InlineData("tune log.svg --plot log.svg", "log.svg")]
    [InlineData("trend log.svg --plot log.svg", "log.svg")]
    [InlineData("map plate.jsonl --grid plate.jsonl", "plate.jsonl")]
    public void WhatIsReadIsNeverWrittenOver(string line, string input) =>
        Within(() =>
        {
            foreach (string ending in new[] { "stl", "3mf" })
                Done("make", "--object", "witness", "-o", $"work.{ending}");
            File.WriteAllText("work.json", CliRun.Of("presets", "witness").Out);
            File.Copy("demo-grey.jsonl", "log.svg");
            Directory.CreateDirectory("real");
            Directory.CreateSymbolicLink("folder", "real");
            File.Copy("holder.stl", "real/holder.stl");
            byte[] before = File.ReadAllBytes(input);
            string[] args = line.Replace(" --object witness --dp", " --dp", StringComparison.Ordinal).Split(' ');
            foreach (string[] all in new[] { args, [.. args, "--force"] })
            {
                Assert.Equal(ExitCode.BadUse, CliRun.Of(all).ExitCode);
                Assert.Equal(before, File.ReadAllBytes(input));
            }
        });

    [Fact]
    public void AMeshOfSomebodyElseBesideASpecStays() =>
        Within(() =>
        {
            File.WriteAllText("holder.json", "{}");
            byte[] before = File.ReadAllBytes("holder.stl");
            Assert.Equal(ExitCode.BadUse, CliRun.Of("make", "--object", "holder.json").ExitCode);
            Assert.Equal(before, File.ReadAllBytes("holder.stl"));
            Assert.False(File.Exists("holder.object.json"));
        });

    [Theory]
    [InlineData("readings --object witness -o bench.json")]
    [InlineData(Simulate + " -o bench.json")]
    [InlineData("map plate.jsonl --grid bench.json")]
    public void MeasuredReadingsInJsonStayAlthoughTheyNameADigest(string line) =>
        Within(() =>
        {
            const string measured = """
                {
                  "digest": "38ddbc6b29db276f",
                  "readings": [{ "feature": "box1.outside.x", "value": 8.02 }]
                }
                """;
            File.WriteAllText("bench.json", measured);
            CliRun run = CliRun.Of(line.Split(' '));
            Assert.Equal((ExitCode.BadUse, ""), (run.ExitCode, run.Out));
            Assert.Contains("bench.json exists and was not written by this tool", run.Error, StringComparison.Ordinal);
            Assert.Equal(measured, File.ReadAllText("bench.json"));
        });

    /// <summary>An option that writes and is not named in the rule would write over anything.</summary>
    [Fact]
    public void EveryOptionThatWritesIsNamedInTheRule()
    {
        using var text = new StringWriter();
        var io = new CommandIo
        {
            Out = text,
            Error = text,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
        };
        Option[] writing =
        [
            .. All(CommandHost.BuildRoot(io))
                .SelectMany(c => c.Options)
                .Where(o =>
                    o.Name is not (ObjectOption.Name or "--log") && Regex.IsMatch(o.HelpName ?? "", "FILE|OUT|LOG")
                ),
        ];
        Assert.Equal(OverwriteRule.Outputs.Order(), writing.Select(o => o.Name).Distinct().Order());
    }

    private static IEnumerable<Command> All(Command command) => command.Subcommands.SelectMany(All).Prepend(command);

    [Fact]
    public void MeasuredReadingsStayAndSimulatedOnesAndEmptySheetsDoNot() =>
        Within(() =>
        {
            string before = File.ReadAllText("bench.csv");
            foreach (string line in new[] { "readings --object witness -o bench.csv", Simulate + " -o bench.csv" })
            {
                CliRun run = CliRun.Of(line.Split(' '));
                Assert.Equal(ExitCode.BadUse, run.ExitCode);
                Assert.Contains("holds values already", run.Error, StringComparison.Ordinal);
                Assert.Equal(before, File.ReadAllText("bench.csv"));
            }
            Done("readings", "--object", "witness", "-o", "sheet.csv");
            Done([.. Simulate.Split(' '), "-o", "sheet.csv"]);
            Done("readings", "--object", "witness", "-o", "sheet.csv");
        });

    private static void Done(params string[] args)
    {
        CliRun run = CliRun.Of(args);
        Assert.True(run.ExitCode is ExitCode.Done or ExitCode.Finding, string.Join(' ', args) + "\n" + run.Error);
    }

    private static void Within(Action work)
    {
        using var folder = new TemporaryFolder();
        DemoSamples.Within(folder, work);
    }
}
