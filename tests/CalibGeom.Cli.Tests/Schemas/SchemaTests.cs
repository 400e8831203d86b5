using System.CommandLine;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Tests.Schemas;

/// <summary>
/// Every command with <c>--json</c> and every JSON file has a schema in docs/schemas that what is written keeps to, and
/// that anything else breaks. All other tests of commands hold their envelopes against the same schemas.
/// </summary>
[Collection(CurrentDirectory.Name)]
public class SchemaTests
{
    // One plain run of each command, in the folder of the demo workshop.
    private static readonly string[] Lines =
    [
        "make --object witness -o new.stl --json",
        "inspect holder.stl --json --layer 0.5",
        "place holder.stl --plate 150x90 -o plate.stl --json",
        "predict bench.csv --for 20/20.2 --budget --json",
        "readings --object witness --json",
        "simulate --object witness --dp 0.12 --ec 4 --irradiance 4 --time 2.5 --json",
        "log add bench.csv --to new.jsonl --time 2.5 --rest 1 --json",
        "log show new.jsonl --json",
        "log undo new.jsonl --json",
        "tune demo-grey.jsonl --json",
        "trend demo-grey.jsonl --json",
        "map plate.jsonl --for 20/20.2 --json",
        "caliper show cal.caliper.csv --json",
        "caliper add new.caliper.csv 10.01 --jaw outside --gauge 10 --json",
        "start --maker-time 2.5 --json",
        "presets --json",
        "draw --object witness -o new.svg --json",
    ];

    [Fact]
    public void EveryCommandWithJsonHasASchemaThatHoldsAndCanFail()
    {
        using var folder = new TemporaryFolder();
        DemoSamples.Within(
            folder,
            () =>
            {
                foreach (string line in Lines)
                {
                    JsonNode envelope = JsonNode.Parse(CliRun.Of(line.Split(' ')).Out)!;
                    string file = OutputSchema.FileOf((string)envelope["command"]!);
                    Assert.NotNull(envelope["result"]);
                    OutputSchema.RequireValid(file, envelope);
                    RequireTeeth(file, envelope);
                }
            }
        );
    }

    [Fact]
    public void NoCommandIsForgotten()
    {
        using var unheard = new StringWriter();
        var io = new CommandIo
        {
            Out = unheard,
            Error = unheard,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
        };
        string[] commands = [.. WithJson(CommandHost.BuildRoot(io), "").Order(StringComparer.Ordinal)];
        Assert.All(
            commands,
            c => Assert.True(File.Exists(Path.Combine(OutputSchema.Folder, OutputSchema.FileOf(c))), c)
        );
        Assert.All(commands, c => Assert.Contains(Lines, l => l.StartsWith(c + " ", StringComparison.Ordinal)));
    }

    [Fact]
    public void ObjectFilesKeepToTheirSchema()
    {
        foreach (Preset preset in Presets.All)
            OutputSchema.RequireValid(
                "object.schema.json",
                JsonNode.Parse(ObjectFileJson.ToText(new ObjectFile(preset.Name, preset.Spec) { Mesh = "a.stl" }))
            );
        var placed = new ObjectFile("witness", Presets.Witness)
        {
            Coupons = [new ObjectCoupon("A1", 1.5, -2, 0, 90)],
            Parts = [new ObjectPart("holder.stl", new string('0', 64))],
        };
        JsonNode file = JsonNode.Parse(ObjectFileJson.ToText(placed))!;
        OutputSchema.RequireValid("object.schema.json", file);
        RequireTeeth("object.schema.json", file);
    }

    [Fact]
    public void FeatureTablesKeepToTheirSchema()
    {
        foreach (Preset preset in Presets.All)
            OutputSchema.RequireValid(
                "feature-table.schema.json",
                JsonNode.Parse(FeatureTableJson.ToText(TestObject.Of(preset.Spec).Features))
            );
    }

    [Theory]
    [InlineData("""{"time":2.5,"layer":0.05}""", true)]
    [InlineData("""{"undo":2,"date":"2026-03-01"}""", true)]
    [InlineData("""{"undo":0}""", false)]
    [InlineData("""{"time":2.5}""", false)]
    [InlineData("""{"time":2.5,"layer":0.05,"colour":"grey"}""", false)]
    [InlineData("""{"time":2.5,"layer":0.05,"state":"wet"}""", false)]
    public void LinesOfALogKeepToTheirSchema(string line, bool valid)
    {
        Assert.Equal(valid, OutputSchema.IsValid("log-line.schema.json", JsonNode.Parse(line)));
        foreach (string demo in (DemoLogs.Witness(0.04, 3) + DemoLogs.Plate(0.4)).TrimEnd().Split('\n'))
            OutputSchema.RequireValid("log-line.schema.json", JsonNode.Parse(demo));
    }

    [Theory]
    [InlineData("""{"readings":[{"feature":"box1.outside.x","value":8.02}]}""")]
    [InlineData(
        """
            {
                "digest": "0123456789abcdef", "temperature": 23, "state": "dry", "expansion": 8e-5, "material": "rigid",
                "comments": ["x"], "instruments": [{"name": "cal", "resolution": 0.01, "mpe": 0.02}],
                "readings": [
                    {"feature": "column1-3.stood", "value": "cure", "note": "n"},
                    {"feature": "box1.outside.x", "value": 8.02, "unit": "mm", "instrument": "cal"}
                ]
            }
            """
    )]
    public void WhatTheSchemaOfReadingsAcceptsIsRead(string text)
    {
        OutputSchema.RequireValid("readings-file.schema.json", JsonNode.Parse(text));
        Assert.NotEmpty(ReadingsFile.Parse(text).Readings);
        RequireTeeth("readings-file.schema.json", JsonNode.Parse(text)!);
    }

    /// <summary>A name too many breaks it, and so does anything else in the place of a result.</summary>
    private static void RequireTeeth(string file, JsonNode document)
    {
        JsonNode more = document.DeepClone();
        more["surprise"] = 1;
        Assert.False(OutputSchema.IsValid(file, more), file);
        if (document["result"] is JsonObject result)
            foreach (string name in result.Select(p => p.Key).ToArray())
            {
                JsonNode other = document.DeepClone();
                other["result"]![name] = new JsonObject { ["surprise"] = true };
                Assert.False(OutputSchema.IsValid(file, other), $"{file}: {name}");
            }
        if (document["result"] is not { } whole)
            return;
        JsonNode odd = document.DeepClone();
        (odd["result"] as JsonObject ?? odd["result"]!.AsArray()[0]!.AsObject())["surprise"] = 1;
        Assert.False(OutputSchema.IsValid(file, odd), $"{file} {whole.GetValueKind()}");
    }

    private static IEnumerable<string> WithJson(Command command, string path)
    {
        if (command.Options.Any(o => o.Name == "--json"))
            yield return path;
        foreach (Command below in command.Subcommands)
        foreach (string found in WithJson(below, path.Length == 0 ? below.Name : $"{path} {below.Name}"))
            yield return found;
    }
}
