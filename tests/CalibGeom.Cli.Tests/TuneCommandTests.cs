using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Tests;

public class TuneCommandTests
{
    private static readonly string[] Light =
    [
        "simulate",
        "--dp",
        "0.12",
        "--ec",
        "4",
        "--irradiance",
        "4",
        "--blur",
        "0.02",
    ];

    [Fact]
    public void ASimulatedPrintIsAddedAndAnswered()
    {
        using var folder = new TemporaryFolder();
        Add(folder, "2.5", "0.5", 7);
        CliRun second = Add(folder, "2", "2", 8);
        Assert.StartsWith("Trial 2 (2 s exposure, 2 s rest) added", second.Out, StringComparison.Ordinal);
        CliRun tune = CliRun.Of(
            "tune",
            folder["log"],
            "--target",
            "0.05",
            "--plot",
            folder["p.svg"],
            "--column-plot",
            folder["c.png"]
        );
        Assert.Equal(0, tune.ExitCode);
        Assert.Matches("^Caution: .*\nwrote .*p.svg\nwrote .*c.png\n$", tune.Error.ReplaceLineEndings("\n"));
        Assert.StartsWith("Print next with", tune.Out, StringComparison.Ordinal);
        Assert.Contains("<svg", File.ReadAllText(folder["p.svg"]), StringComparison.Ordinal);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], File.ReadAllBytes(folder["c.png"])[..4]);
        JsonNode json = JsonNode.Parse(CliRun.Of("tune", folder["log"], "--json").Out)!;
        Assert.Equal("tune", (string)json["command"]!);
        Assert.Equal(2, (int)json["result"]!["trials"]!);
        Assert.Equal("change", (string)json["result"]!["next"]!["kind"]!);
    }

    [Theory]
    [InlineData("500")]
    [InlineData("600")]
    [InlineData("0.02")]
    public void TheLongestAndTheShortestExposuresAreDrawn(string time)
    {
        using var folder = new TemporaryFolder();
        folder.Write(
            "r.csv",
            "feature,value\nbox1.outside.x,8.06\nbox2.inside.x,8.04\nbox1.outside.y,8.06\nbox2.inside.y,8.04\n"
        );
        string[] known = ["--time", time, "--rest", "1", "--layer", "0.05", "--object", "standard"];
        Assert.Equal(0, CliRun.Of(["log", "add", folder["r.csv"], "--to", folder["log"], .. known]).ExitCode);
        CliRun tune = CliRun.Of("tune", folder["log"], "--plot", folder["p.svg"], "--report", folder["p.html"]);
        Assert.True(tune.ExitCode == 0, tune.Error);
        Assert.Contains("<svg", File.ReadAllText(folder["p.svg"]), StringComparison.Ordinal);
    }

    [Fact]
    public void ATargetOutOfReachIsSaidSoWithoutAnInventedExposure()
    {
        using var folder = new TemporaryFolder();
        Add(folder, "2.5", "0.5", 7);
        CliRun tune = CliRun.Of("tune", folder["log"], "--target", "-1");
        Assert.Equal(0, tune.ExitCode);
        Assert.Contains("note [loose] Loose", tune.Out, StringComparison.Ordinal);
        Assert.DoesNotMatch("[0-9]{6}", tune.Out);
    }

    [Fact]
    public void EverythingToTypeIsPrintedAndWhatIsHeldStays()
    {
        using var folder = new TemporaryFolder();
        Add(folder, "2.5", "0.5", 7);
        string told = CliRun.Of("tune", folder["log"]).Out;
        foreach (
            string line in new[]
            {
                "exposure",
                "rest before exposure",
                "counted from light-off",
                "edge offset",
                "base layers",
                "must be off",
            }
        )
            Assert.Matches($@"\n +{line} +\S", told);
        JsonNode Next(params string[] more) =>
            JsonNode.Parse(CliRun.Of(["tune", folder["log"], "--json", .. more]).Out)!["result"]!["next"]!;
        Assert.Equal(2.5, (double)Next("--hold", "time")["settings"]!["time"]!);
        Assert.Equal(0.5, (double)Next("--hold", "rest")["settings"]!["rest"]!);
        Assert.Equal(0, (double)Next("--no-offset")["settings"]!["edgeOffset"]!);
        double offset = (double)Next("--pixel", "0.04")["settings"]!["edgeOffset"]!;
        Assert.Equal(Math.Round(offset / 0.04), offset / 0.04, 1e-9);
        Assert.NotNull(Next("--pixel", "0.04")["pixels"]);
    }

    [Fact]
    public void AStartSaysWhyAndHowUnsureItIs()
    {
        // Common practice of one kind of printers, the quoted curve, and a log that was kept.
        JsonNode maker = Start("--maker-time", "2.5"),
            curve = Start("--dp", "0.12", "--ec", "4", "--irradiance", "4");
        Assert.Equal(2.5, (double)maker["time"]!);
        // Ec exp(2 layers / Dp) / irradiance = exp(0.1 / 0.12) s.
        Assert.Equal(Math.Exp(0.1 / 0.12), (double)curve["time"]!, 0.006);
        Assert.True((double)curve["high"]! / (double)curve["low"]! > 70);
        Assert.True((double)maker["high"]! / (double)maker["low"]! < 4);
        using var folder = new TemporaryFolder();
        Add(folder, "2.5", "0.5", 7);
        Assert.True((double)Start("--log", folder["log"], "--layer", "0.03")["time"]! < 2.5);
        CliRun none = CliRun.Of("start");
        Assert.Equal((2, ""), (none.ExitCode, none.Out));
        Assert.Contains("Give one beginning", none.Error, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("start", "--dp", "0.12").ExitCode);
        Assert.Contains("Caution", CliRun.Of("start", "--maker-time", "2").Error, StringComparison.Ordinal);

        static JsonNode Start(params string[] args) =>
            JsonNode.Parse(CliRun.Of(["start", .. args, "--json"]).Out)!["result"]!;
    }

    [Fact]
    public void ALogOnStandardInputAndOneNamedAddAreRead()
    {
        byte[] log = "{\"time\":2,\"layer\":0.05,\"growthX\":{\"value\":0.01,\"uncertainty\":0.003}}\n"u8.ToArray();
        Assert.Equal(0, CliRun.With(log, "tune", "-").ExitCode);
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["add"], log);
        Assert.Equal(0, CliRun.Of("tune", folder["add"]).ExitCode);
        Assert.Equal(2, CliRun.Of("log", "add").ExitCode);
    }

    [Fact]
    public void WithoutASeedSizesAreExactAndTheSameSeedGivesTheSameReadings()
    {
        string[] args = [.. Light, "--time", "2.5"];
        string exact = CliRun.Of(args).Out,
            noisy = CliRun.Of([.. args, "--seed", "7"]).Out;
        Assert.Equal(exact, CliRun.Of(args).Out);
        Assert.Equal(noisy, CliRun.Of([.. args, "--seed", "7"]).Out);
        Assert.NotEqual(noisy, CliRun.Of([.. args, "--seed", "8"]).Out);
        Assert.Contains(
            "# state dry\n# material rigid\nfeature,value\nbox1.outside.x,8.0",
            exact,
            StringComparison.Ordinal
        );
        Assert.Contains("slots.open,", exact, StringComparison.Ordinal);
        Assert.Contains("joint1.fit,", exact, StringComparison.Ordinal);
        string line = noisy.Split('\n').First(l => l.StartsWith("box2.inside.x,", StringComparison.Ordinal));
        Assert.Matches(@"^box2\.inside\.x,\d+\.\d\d$", line);
    }

    [Fact]
    public void ExactReadingsGiveBackTheGrowthOfTheLight()
    {
        using var folder = new TemporaryFolder();
        CliRun.Of([.. Light, "--time", "2.5", "-o", folder["r.csv"]]);
        CliRun.Of("log", "add", folder["r.csv"], "--to", folder["log"], "--time", "2.5", "--rest", "0");
        JsonNode trial = JsonNode.Parse(File.ReadAllText(folder["log"]))!;
        var light = new CalibGeom.Light.LayerLight(new CalibGeom.Light.WorkingCurve(0.12, 4), 4, 2.5, 0.05);
        double growth = new CalibGeom.Light.GaussianBlur(0.02).EdgeDistance(1 / light.WallRatio());
        Assert.Equal(growth, (double)trial["growthX"]!["value"]!, 1e-4);
        Assert.Equal(growth, (double)trial["growthY"]!["value"]!, 1e-4);
        Assert.True((double)trial["growthX"]!["bias"]! > 0);
    }

    [Fact]
    public void ASqueezedPrintIsReadByPredictAndTune()
    {
        using var folder = new TemporaryFolder();
        CliRun.Of([.. Light, "--time", "2.5", "--squeeze", "0.3", "-o", folder["r.csv"]]);
        Assert.Contains("\nsqueeze.open,1\n", File.ReadAllText(folder["r.csv"]), StringComparison.Ordinal);
        JsonNode bracket = JsonNode.Parse(CliRun.Of("predict", folder["r.csv"], "--json").Out)!["result"]!["coupons"]![
            0
        ]!["squeeze"]!;
        Assert.True((double)bracket["low"]! <= 0.3 && (double)bracket["high"]! >= 0.3);
        Assert.Equal(
            0,
            CliRun.Of("log", "add", folder["r.csv"], "--to", folder["log"], "--time", "2.5", "--rest", "0").ExitCode
        );
        Assert.Equal(1, (int)JsonNode.Parse(File.ReadAllText(folder["log"]))!["readings"]!["squeeze.open"]![0]!);
        string plain = CliRun.Of([.. Light, "--time", "2.5"]).Out,
            witness = CliRun.Of([.. Light, "--time", "2.5", "--object", "witness"]).Out;
        Assert.Contains("\nsqueeze.open,3\n", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("squeeze", witness, StringComparison.Ordinal);
        string bases = CliRun.Of([.. Light, "--time", "2.5", "--base-layers", "40", "--base-time", "200"]).Out;
        Assert.Contains("\nsqueeze.open,2\n", bases, StringComparison.Ordinal);
    }

    [Fact]
    public void MissingRowsNearThePlateGoAwayWithEnoughRest()
    {
        // Common practice, no source: rows of the squeeze tab nearest the plate are missing without rest.
        int Open(string rest) =>
            int.Parse(
                CliRun
                    .Of([.. Light, "--time", "2.5", "--squeeze", "0.3", "--rest", rest])
                    .Out.Split('\n')
                    .Single(l => l.StartsWith("squeeze.open,", StringComparison.Ordinal))
                    .Split(',')[1],
                System.Globalization.CultureInfo.InvariantCulture
            );
        int[] open = [Open("0"), Open("1.5"), Open("6")];
        Assert.True(open[0] < open[2]);
        Assert.Equal(open.Order(), open);
        Assert.Contains(
            $"squeeze.open,{open[2]}\n",
            CliRun.Of([.. Light, "--time", "2.5", "--rest", "6"]).Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ScaleIsToldAndWhatWasTypedIsLogged()
    {
        using var folder = new TemporaryFolder();
        void Print(string scale, params string[] typed)
        {
            CliRun.Of([.. Light, "--time", "2.5", "--rest", "1", "--scale", scale, "-o", folder["r.csv"]]);
            Assert.Equal(
                0,
                CliRun
                    .Of([
                        "log",
                        "add",
                        folder["r.csv"],
                        "--to",
                        folder["log"],
                        "--time",
                        "2.5",
                        "--rest",
                        "1",
                        .. typed,
                    ])
                    .ExitCode
            );
        }
        Print("-0.003");
        Assert.Matches(@"\n +scale X +100\.\d\d %", CliRun.Of("tune", folder["log"]).Out);
        // Printed with what was told, sizes come out true, and the same is told again.
        Print("0", "--scale-x", "1.003", "--scale-y", "1.003");
        JsonNode next = JsonNode.Parse(CliRun.Of("tune", folder["log"], "--json").Out)!["result"]!["next"]!;
        Assert.Equal(1.003, (double)next["scaleX"]!, 3e-4);
        Assert.Equal(1.003, (double)next["scaleY"]!, 3e-4);
    }

    [Fact]
    public void PixelsMayDifferByAxisAndAnEdgeOffsetMovesThem()
    {
        double Width(params string[] more)
        {
            JsonNode json = JsonNode.Parse(
                CliRun.Of([.. Light, "--time", "2.5", "--object", "witness", "--json", .. more]).Out
            )!;
            return (double)
                json["result"]!["readings"]!.AsArray().Single(r => (string)r!["feature"]! == "box1.outside.x")![
                    "value"
                ]!;
        }
        Assert.Equal(Width("--pixel", "0.04") + 0.08, Width("--pixel", "0.04,0.05", "--edge-offset", "0.04"), 1e-4);
        CliRun bad = CliRun.Of([.. Light, "--time", "2.5", "--pixel", "0.04,0.04,0.04"]);
        Assert.Equal(2, bad.ExitCode);
        Assert.Contains("two for X and Y", bad.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TheDigestOfTheReadingsNamesTheObject()
    {
        using var folder = new TemporaryFolder();
        CliRun.Of([.. Light, "--time", "2.5", "--object", "witness", "-o", folder["w.csv"]]);
        string[] add = ["log", "add", folder["w.csv"], "--to", folder["log"], "--time", "2.5", "--rest", "0"];
        Assert.Equal(0, CliRun.Of(add).ExitCode);
        double[] heads = JsonNode.Parse(File.ReadAllText(folder["log"]))!["columns"]!
            .AsArray()
            .Select(c => (double)c!["diameter"]!)
            .ToArray();
        Assert.Equal(
            CalibGeom
                .TestObjects.TestObject.Of(CalibGeom.TestObjects.Specs.Presets.Witness)
                .Columns.Select(c => c.Diameter),
            heads
        );
        CliRun other = CliRun.Of([.. add, "--object", "standard"]);
        Assert.Equal(2, other.ExitCode);
        Assert.Contains("another object", other.Error, StringComparison.Ordinal);
        Assert.Single(File.ReadAllLines(folder["log"]));
    }

    [Fact]
    public void SlipsAreSaidAndCouponsAndInstrumentsKept()
    {
        using var folder = new TemporaryFolder();
        folder.Write(
            "r.csv",
            "feature,value,unit,instrument\nA1/box1.outside.x,80.2,,cal\nA1/box1.outside.x,8.02,,cal\nA1/box2.inside.x,8.08,,cal\nB2/box1.outside.x,8.01,,cal\n"
        );
        string[] add = ["log", "add", folder["r.csv"], "--to", folder["log"], "--time", "2.5", "--rest", "0"];
        Assert.Contains("several coupons (A1, B2)", CliRun.Of(add).Error, StringComparison.Ordinal);
        Assert.Contains(
            "no readings of coupon C",
            CliRun.Of([.. add, "--coupon", "C"]).Error,
            StringComparison.Ordinal
        );
        CliRun run = CliRun.Of([.. add, "--coupon", "A1"]);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("[reading-far-off] A1/box1.outside.x", run.Out, StringComparison.Ordinal);
        Assert.Contains("[state-unknown]", run.Out, StringComparison.Ordinal);
        Assert.Equal("cal", (string)JsonNode.Parse(File.ReadAllText(folder["log"]))!["instrument"]!);
    }

    [Fact]
    public void PriorsRulesAndThresholdsAreObeyed()
    {
        using var folder = new TemporaryFolder();
        Add(folder, "2.5", "0.5", 7);
        JsonNode Result(params string[] more) =>
            JsonNode.Parse(CliRun.Of(["tune", folder["log"], "--json", .. more]).Out)!["result"]!;
        JsonNode plain = Result();
        Assert.True((double)Result("--prior", "restEffect=0.02/0.019/0.021")["response"]!["restEffect"]! > 0.018);
        Assert.Equal(1.2, (double)Result("--rule", "mostRest=1.2")["next"]!["settings"]!["rest"]!, 1e-9);
        Assert.NotEqual(
            (double)plain["response"]!["growth"]!,
            (double)Result("--thresholds", "0.05/0.1/0.2")["response"]!["growth"]!
        );
        Assert.True(
            (double)plain["columns"]!["low"]! < (double)plain["columns"]!["limit"]!
                && (double)plain["columns"]!["limit"]! < (double)plain["columns"]!["high"]!
        );
        Assert.True((bool)plain["slots"]!["known"]!);
        Assert.True((double)plain["slots"]!["curedLayers"]! > 0);
        Assert.Contains(
            "buckles at",
            CliRun.Of("tune", folder["log"], "--modulus", "900").Out,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WhenEveryColumnStandsNoLimitIsTold()
    {
        using var folder = new TemporaryFolder();
        string columns = string.Join(
            ',',
            new[] { "0.25", "0.4", "0.8" }.Select(d => $"{{\"diameter\":{d},\"headDiameter\":1.6,\"stood\":\"cure\"}}")
        );
        string log = folder.Write(
            "log.jsonl",
            $"{{\"time\":2,\"layer\":0.05,\"growthX\":{{\"value\":0,\"uncertainty\":0.002}},\"columns\":[{columns}]}}\n"
        );
        JsonNode result = JsonNode.Parse(CliRun.Of("tune", log, "--json").Out)!["result"]!;
        Assert.Null(result["columns"]!["limit"]);
        Assert.All(result["curve"]!.AsArray(), p => Assert.Null(p!["columnLimit"]));
        Assert.Contains("Every column stood, down to 0.25 mm", CliRun.Of("tune", log).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void TheEffectOfRestIsSet()
    {
        double Width(params string[] more)
        {
            JsonNode json = JsonNode.Parse(CliRun.Of([.. Light, "--time", "2.5", "--json", .. more]).Out)!;
            return (double)
                json["result"]!["readings"]!.AsArray().Single(r => (string)r!["feature"]! == "box1.outside.x")![
                    "value"
                ]!;
        }

        double without = Width();
        Assert.Equal(2 * 0.012 * (1 - Math.Exp(-1 / 1.5)), without - Width("--rest", "1"), 2e-6);
        Assert.Equal(
            2 * 0.02 * (1 - Math.Exp(-0.5)),
            without - Width("--rest", "1", "--rest-effect", "0.02", "--rest-time", "2"),
            2e-6
        );
    }

    [Theory]
    [InlineData("tune", "no log")]
    [InlineData("tune|NONE", "There is no log")]
    [InlineData("tune|LOG|--target|abc", "abc")]
    [InlineData("tune|LOG|--target|9", "target clearance")]
    [InlineData("tune|LOG|--tolerance|NaN", "tolerance")]
    [InlineData("tune|LOG|--plot|x.gif", "x.gif")]
    [InlineData("tune|LOG|--prior|speed=1", "known prior")]
    [InlineData("tune|LOG|--prior|timeEffect=-1", "median")]
    [InlineData("tune|LOG|--prior|restTime=1,5", "decimal point")]
    [InlineData("tune|LOG|--prior|timeEffect=0.02/0.03/0.04", "MEDIAN/LOW/HIGH")]
    [InlineData("tune|LOG|--prior|growth=0.02/0.03", "one number")]
    [InlineData("tune|LOG|--rule|speed=1", "known rule")]
    [InlineData("tune|LOG|--rule|mostRest=-1", "longest rest")]
    [InlineData("tune|LOG|--rule|mostUp=1/2", "one number")]
    [InlineData("tune|LOG|--thresholds|0/0.1", "--thresholds")]
    [InlineData("tune|LOG|--thresholds|0.1/0/0.2", "rise")]
    [InlineData("tune|LOG|--modulus|-5", "modulus")]
    [InlineData("tune|LOG|--hold|speed", "time, rest or offset")]
    [InlineData("tune|LOG|--dp|0.1", "three numbers")]
    [InlineData("tune|LOG|--pixel|7", "0.005 to 0.5")]
    [InlineData("tune|LOG|--time-step|0", "step of exposure")]
    [InlineData("tune|LOG|--height|0", "production height")]
    [InlineData("tune|LOG|--column-plot|OUT.svg", "columns")]
    [InlineData("tune|BAD", "BAD:1")]
    [InlineData("tune|EMPTY", "no trial")]
    [InlineData("log|add|NONE|--to|OUT|--time|2|--rest|0", "no such file")]
    [InlineData("log|add|READINGS|--to|OUT|--rest|0", "The exposure is not known")]
    [InlineData("log|add|READINGS|--to|OUT|--time|-2|--rest|0", "exposure time")]
    [InlineData("log|add|READINGS|--to|OUT|--time|2|--rest|NaN", "rest time")]
    [InlineData("log|add|READINGS|--to|OUT|--time|2|--rest|0|--orientation|45", "0 or 90")]
    [InlineData("log|add|READINGS|--to|OUT|--time|2|--rest|0|--date|yesterday", "2026-03-01")]
    [InlineData("log|add|READINGS|--to|BAD|--time|2|--rest|0", ":1")]
    [InlineData("simulate|--dp|0|--ec|8|--irradiance|4|--time|2", "penetration depth")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|2|--kernel|box", "gaussian or lorentz")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4", "--time")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|0.1", "nothing prints")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|2|--squeeze|-1", "squeeze")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|2|--rest-time|0", "time of rest")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|2|--rest-effect|NaN", "effect of rest")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|2|--base-time|-1", "base exposure")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|2|--repeats|0", "repeats")]
    [InlineData("simulate|--dp|0.1|--ec|8|--irradiance|4|--time|2|--object|none", "no preset")]
    public void BadUseIsOneLineAndLeavesNoFile(string line, string said)
    {
        using var folder = new TemporaryFolder();
        folder.Write("LOG", "{\"time\":2,\"layer\":0.05,\"growthX\":{\"value\":0.01,\"uncertainty\":0.003}}\n");
        folder.Write("BAD", "exposure 2 s\n");
        folder.Write("EMPTY", "\n");
        folder.Write("READINGS", "feature,value\nbox1.outside.x,8.02\nbox2.inside.x,8.08\n");
        string[] names = ["NONE", "LOG", "BAD", "EMPTY", "READINGS", "OUT", "OUT.svg"];
        CliRun run = CliRun.Of(line.Split('|').Select(a => names.Contains(a) ? folder[a] : a).ToArray());
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        if (said != "no log")
            Assert.Contains(said, run.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
        Assert.False(File.Exists(folder["OUT"]) || File.Exists(folder["OUT.svg"]));
    }

    internal static CliRun Add(TemporaryFolder folder, string time, string rest, int seed)
    {
        CliRun.Of([
            .. Light,
            "--time",
            time,
            "--rest",
            rest,
            "--seed",
            $"{seed}",
            "--repeats",
            "2",
            "-o",
            folder["r.csv"],
        ]);
        return CliRun.Of(
            "log",
            "add",
            folder["r.csv"],
            "--to",
            folder["log"],
            "--time",
            time,
            "--rest",
            rest,
            "--resin",
            "Demo grey",
            "--printer",
            "bench"
        );
    }
}
