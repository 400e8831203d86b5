using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

public class PredictCommandTests
{
    private const string Bench =
        "# state post-cured\n# material rigid\nfeature,value\nbox1.outside.x,8.02\nbox1.outside.y,8.02\nbox2.inside.x,8.08\nbox2.inside.y,8.08\nbox2.outside.x,11.22\nspan.x,40.02\nspan.y,25.02\nslots.open,6\n";

    private static CliRun Predict(string csv, params string[] more) =>
        CliRun.With(Encoding.UTF8.GetBytes(csv), ["predict", "-", .. more]);

    [Fact]
    public void TheAnswerComesFirst()
    {
        CliRun run = Predict(Bench, "--object", "standard");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.StartsWith("joint 1 should slide: 0.03", run.Out, StringComparison.Ordinal);
        Assert.Contains(
            "From two faces alone this instrument gives +-0.026 mm per side (95 %).",
            run.Out,
            StringComparison.Ordinal
        );
        Assert.Contains("print-through: between 0.200 and 0.250 mm", run.Out, StringComparison.Ordinal);
        Assert.Contains("halve", run.Out, StringComparison.Ordinal);
        Assert.Contains("gloves", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingsOnTheCommandLineAnswerAsThoseOfAFileDo()
    {
        using var folder = new TemporaryFolder();
        folder.Write("bench.csv", "feature,value\nbox1.outside.x,8.02\nbox2.inside.x,8.09\njoint1.fit,slides\n");
        string[] same = ["--object", "standard", "--json"];
        CliRun given = CliRun.Of([
            "predict",
            "--reading",
            "box1.outside.x=8.02",
            "--reading",
            "box2.inside.x=8.09",
            "--reading",
            "joint1.fit=slides",
            .. same,
        ]);
        Assert.Equal(0, given.ExitCode);
        Assert.Equal(
            JsonNode.Parse(CliRun.Of(["predict", folder["bench.csv"], .. same]).Out)!["result"]!.ToJsonString(),
            JsonNode.Parse(given.Out)!["result"]!.ToJsonString()
        );
    }

    [Theory]
    [InlineData("box1.outside.x", "box1.outside.x: write the feature's id and its value")]
    [InlineData("box1.outside.x=abc", "box1.outside.x=abc: box1.outside.x is \"abc\", which is no number")]
    [InlineData("box1.outside.x=8,02", "Write 8.02, with a decimal point")]
    [InlineData("box9.outside.x=8.02", "predict: box9.outside.x is no feature of this object")]
    public void AReadingOnTheCommandLineIsRefusedWithoutALineOfAFile(string given, string message)
    {
        CliRun run = CliRun.Of("predict", "--object", "standard", "--reading", given);
        Assert.Equal((2, ""), (run.ExitCode, run.Out));
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("line", run.Error, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void OnesOwnJointIsAnswered()
    {
        string text = Predict(Bench, "--object", "standard", "--for", "20/20.2", "--want", "0.04").Out;
        Assert.Contains("a 20 mm peg in a 20.2 mm hole should rattle:", text, StringComparison.Ordinal);
        Assert.Contains("ISO 286", text, StringComparison.Ordinal);
        Assert.Contains("for 0.040 mm per side: a hole of 20.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonHoldsTheSameInOneEnvelope()
    {
        CliRun run = Predict(
            Bench + "box3.outside.x,160\n",
            "--object",
            "standard",
            "--json",
            "--for",
            "20/20.2",
            "--budget",
            "--monte-carlo",
            "--pixel",
            "0.05"
        );
        JsonNode root = JsonNode.Parse(run.Out)!;
        Assert.Equal("predict", (string?)root["command"]);
        Assert.Contains(root["findings"]!.AsArray(), f => (string?)f!["rule"] == "reading-far-off");
        JsonNode answer = root["result"]!["coupons"]![0]!;
        Assert.Equal(0.05, (double)answer["joints"]![0]!["axes"]![0]!["design"]!, 6);
        Assert.InRange((double)answer["joints"]![0]!["axes"]![0]!["clearance"]!["value"]!, 0.02, 0.04);
        Assert.NotEmpty(answer["joints"]![0]!["axes"]![0]!["budget"]!.AsArray());
        Assert.Equal(11, answer["ownJoint"]!["isoFits"]!.AsArray().Count);
        Assert.NotNull(answer["sizes"]![0]!["wholePixels"]);
    }

    [Fact]
    public void WithoutANameTheDigestFindsThePresetOrStandardIsAssumedAndSaid()
    {
        using var folder = new TemporaryFolder();
        string file = folder["empty.csv"];
        Assert.Equal(ExitCode.Done, CliRun.Of("readings", "--object", "witness", "-o", file).ExitCode);
        string witness = File.ReadAllText(file)
            .Replace("box1.outside.x,,", "box1.outside.x,8.02,", StringComparison.Ordinal)
            .Replace("box2.inside.x,,", "box2.inside.x,8.07,", StringComparison.Ordinal);
        CliRun run = Predict(witness);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.DoesNotContain("nominals-assumed", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("joint 2", run.Out, StringComparison.Ordinal);
        Assert.Contains("nominals-assumed", Predict(Bench).Out, StringComparison.Ordinal);
        CliRun other = Predict(witness, "--object", "standard");
        Assert.Equal((ExitCode.BadUse, ""), (other.ExitCode, other.Out));
        Assert.Contains("The readings are of another object", other.Error, StringComparison.Ordinal);
        CliRun unknown = Predict(
            "# digest 0123456789abcdef\n" + witness[(witness.IndexOf('\n', StringComparison.Ordinal) + 1)..]
        );
        Assert.Equal(ExitCode.BadUse, unknown.ExitCode);
        Assert.Contains("Wanted is the .object.json", unknown.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFeatureTableServesAndFilesArePooled()
    {
        using var folder = new TemporaryFolder();
        string table = folder.Write(
            "t.features.csv",
            "feature,nominal,unit,axis,how\nbox1.outside.x,8,mm,x,\nbox2.inside.x,8.1,mm,x,\njoint1.fit,0.05,fit,,\n"
        );
        string a = folder.Write("a.csv", "feature,value\nbox1.outside.x,8.02\n"),
            b = folder.Write("b.csv", "feature,value\nbox2.inside.x,8.08\njoint1.fit,slides\n");
        CliRun run = CliRun.Of("predict", a, b, "--object", table, "--budget", "--one-print");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.StartsWith("joint 1 should slide: 0.0", run.Out, StringComparison.Ordinal);
        Assert.Contains("joint 1 in X: c = (0.0", run.Out, StringComparison.Ordinal);
        Assert.Contains("where the number after +- is U = k u", run.Out, StringComparison.Ordinal);
        Assert.Contains("axis", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void EachFileIsAPrintAndNoneCountsTwice()
    {
        using var folder = new TemporaryFolder();
        string a = folder.Write("a.csv", Bench),
            b = folder.Write("b.csv", Bench.Replace("8.02", "8.03", StringComparison.Ordinal)),
            copy = folder.Write("copy.csv", Bench);
        CliRun run = CliRun.Of("predict", a, b, "--object", "standard", "--for", "20/20.2");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("learnt from 2 prints", run.Out, StringComparison.Ordinal);
        Assert.Contains("next-print-assumed", run.Out, StringComparison.Ordinal);
        string set = CliRun.Of("predict", a, "--object", "standard", "--between-prints", "0.012").Out;
        Assert.Contains("standard deviation 0.0120 mm (as set)", set, StringComparison.Ordinal);
        Assert.Equal(ExitCode.BadUse, CliRun.Of("predict", a, a, "--object", "standard").ExitCode);
        string remarked = folder.Write("remarked.csv", "# second\n" + Bench.TrimEnd() + "\n\n");
        foreach (string again in new[] { copy, remarked })
        {
            CliRun same = CliRun.Of("predict", a, again, "--object", "standard");
            Assert.Equal(ExitCode.BadUse, same.ExitCode);
            Assert.Contains("Prints 1 and 2 have the same readings", same.Error, StringComparison.Ordinal);
        }
    }

    /// <summary>With several files a line alone says nothing.</summary>
    [Fact]
    public void AFindingAboutAReadingNamesItsFile()
    {
        using var folder = new TemporaryFolder();
        string a = folder.Write("a.csv", Bench),
            slip = folder.Write("b.csv", Bench.Replace("8.02", "80.2", StringComparison.Ordinal)),
            odd = folder.Write("c.csv", Bench + "box9.outside.x,8\n");
        Assert.Matches(
            @"box1\.outside\.x: \S*b\.csv:\d+: 80\.2 mm is",
            CliRun.Of("predict", a, slip, "--object", "standard").Out
        );
        Assert.Matches(
            @"c\.csv:\d+: box9\.outside\.x is no feature",
            CliRun.Of("predict", a, odd, "--object", "standard").Error
        );
    }

    [Fact]
    public void LimitsAndIsoFitsAreDecided()
    {
        string text = Predict(Bench, "--object", "standard", "--limits", "0.02/0.07").Out;
        Assert.Contains("joint 1 in X cannot be told: 0.0", text, StringComparison.Ordinal);
        Assert.Contains("ISO 14253-1", text, StringComparison.Ordinal);
        Assert.Contains("joint 1 in X conforms", Predict(Bench, "--object", "standard", "--limits", "-0.1/0.2").Out);
        JsonNode root = JsonNode.Parse(
            Predict(Bench, "--object", "standard", "--for", "12H11/c11", "--limits", "0.02/0.07", "--json").Out
        )!;
        JsonNode own = root["result"]!["coupons"]![0]!["ownJoint"]!;
        // 12H11/c11 by ISO 286-1: hole 0/+110, shaft -95/-205 micrometres; middles, and 95 to 315 across.
        Assert.Equal(11.85, (double)own["peg"]!, 6);
        Assert.Equal(12.055, (double)own["hole"]!, 6);
        Assert.Equal(0.0475, (double)own["axes"]![0]!["decision"]!["low"]!, 6);
        Assert.Equal(0.1575, (double)own["axes"]![0]!["decision"]!["high"]!, 6);
    }

    [Fact]
    public void NoLineOfTheTablesIsOver100Columns()
    {
        string text = Predict(Bench, "--object", "standard", "--for", "20/20.2").Out;
        // Findings are sentences of any length; their remedies are indented by four.
        string[] table = text.Split('\n')
            .Where(l => l.Length > 0 && l[0] != ' ' && l.Contains("  ", StringComparison.Ordinal))
            .ToArray();
        Assert.NotEmpty(table);
        Assert.All(table, l => Assert.True(l.TrimEnd().Length <= 100, l));
        Assert.DoesNotContain("-0.000", text, StringComparison.Ordinal);
    }

    [Fact]
    public void EachCouponIsAnsweredByItself()
    {
        const string Two =
            "feature,value\nA1/box1.outside.x,8.02\nA1/box2.inside.x,8.08\nB2/box1.outside.x,8.05\nB2/box2.inside.x,8.03\n";
        string text = Predict(Two, "--object", "witness").Out;
        Assert.Contains("coupon A1\njoint 1 should slide", text.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains("coupon B2\njoint 1 should ", text.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.DoesNotContain(
            "coupon A1",
            Predict(Two, "--object", "witness", "--coupon", "B2").Out,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("predict nowhere.csv", "there is no such file")]
    [InlineData("predict .", "this is a directory")]
    [InlineData("predict", "READINGS")]
    [InlineData("predict - --for 20", "--for is \"20\"")]
    [InlineData("predict - --for 20,1/20,2", "decimal points")]
    [InlineData("predict - --for 20/40", "within 5 mm")]
    [InlineData("predict - --for NaN/20", "--for")]
    [InlineData("predict - --want 0.04", "--want needs --for")]
    [InlineData("predict - --for 20/20.2 --want 9", "-1 to 2 mm")]
    [InlineData("predict - --want abc", "--want")]
    [InlineData("predict - --limits 0.07/0.02", "--limits")]
    [InlineData("predict - --limits 0.02", "--limits is")]
    [InlineData("predict - --between-prints -1", "The deviation between")]
    [InlineData("predict - --for 12H7/z6", "letter")]
    [InlineData("predict - --for 120H7/g6", "50 mm")]
    [InlineData("predict - --pixel -1", "0.005 to 1")]
    [InlineData("predict - --pixel NaN", "0.005 to 1")]
    [InlineData("predict - --thresholds 1/2", "--thresholds is")]
    [InlineData("predict - --thresholds 0.1/0.02/0.07", "must rise")]
    [InlineData("predict - --coupon Z9", "no readings of coupon Z9")]
    [InlineData("predict - --object t.csv --object witness", "--object")]
    [InlineData("predict - --set columns.height=5", "Name it too")]
    [InlineData("predict - --object nowhere.csv", "there is no such file")]
    [InlineData("predict - --object nope", "no preset of that name")]
    [InlineData("readings --object witnes", "Did you mean witness?")]
    [InlineData("readings -o nowhere/empty.csv", "there is no directory")]
    public void BadUseEndsWithTwoAndOneLine(string line, string message)
    {
        CliRun run = CliRun.With(Encoding.UTF8.GetBytes(Bench), line.Split(' '));
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd().Split('\n'));
        Assert.Empty(run.Out);
    }

    [Theory]
    [InlineData(
        "feature,value\nbox1.outside.x,\"8,02\"\n",
        "standard input:2: box1.outside.x is \"8,02\", with a decimal comma. Write 8.02"
    )]
    [InlineData("feature,value\nbox1.outsde.x,8.02\n", "Did you mean box1.outside.x?")]
    [InlineData("feature,value\nslots.open,4\n", "no usable size")]
    [InlineData("feature,value\n", "no usable size")]
    [InlineData("\u0001\u0002", "standard input:1:")]
    public void UnusableReadingsEndWithTwo(string csv, string message)
    {
        CliRun run = Predict(csv, "--object", "standard");
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void TheEmptyFileIsShortAndSaysWhatCanBeMeasured()
    {
        CliRun run = CliRun.Of("readings", "--object", "witness");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.StartsWith("# digest ", run.Out, StringComparison.Ordinal);
        Assert.Contains("\nbox1.outside.x,,mm,cal,", run.Out, StringComparison.Ordinal);
        JsonNode json = JsonNode.Parse(CliRun.Of("readings", "--object", "witness", "--json").Out)!;
        Assert.Equal(21, json["result"]!["features"]!.AsArray().Count);
        Assert.True(run.Out.Split('\n').Count(l => l.Length > 0 && l[0] != '#') - 1 < 16);
    }

    [Fact]
    public void ASheetThatHoldsValuesIsNotWrittenOver()
    {
        using var folder = new TemporaryFolder();
        string[] line = ["readings", "--object", "witness", "-o", folder["bench.csv"]];
        Assert.Equal(ExitCode.Done, CliRun.Of(line).ExitCode);
        Assert.Equal(ExitCode.Done, CliRun.Of(line).ExitCode);
        string empty = File.ReadAllText(folder["bench.csv"]),
            filled = empty.Replace("box1.outside.x,,", "box1.outside.x,8.02,", StringComparison.Ordinal);
        File.WriteAllText(folder["bench.csv"], filled);
        CliRun refused = CliRun.Of(line);
        Assert.Equal(ExitCode.BadUse, refused.ExitCode);
        Assert.Contains("holds values already", refused.Error, StringComparison.Ordinal);
        Assert.Equal(filled, File.ReadAllText(folder["bench.csv"]));
        Assert.Equal(ExitCode.Done, CliRun.Of([.. line, "--force"]).ExitCode);
        Assert.Equal(empty, File.ReadAllText(folder["bench.csv"]));
    }

    [Theory]
    [InlineData("predict")]
    [InlineData("readings")]
    public void HelpEndsWithAnExample(string command) =>
        Assert.StartsWith(
            $"calibgeom {command} ",
            CliRun.Of(command, "--help").Out.TrimEnd().Split('\n')[^1].Trim(),
            StringComparison.Ordinal
        );
}
