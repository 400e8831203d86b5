using System.Globalization;
using CalibGeom.Pictures.BenchSheet;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Bridge;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Jint;

namespace CalibGeom.Pictures.Tests.BenchSheet;

/// <summary>The sheet's own script, run here without a browser and held beside the library.</summary>
public class SheetScriptTests
{
    private static readonly TestObject Standard = TestObject.Of(new TestObjectSpec { Bridge = new BridgeSpec() });
    private static readonly Engine Script = Load();

    private static Engine Load()
    {
        var engine = new Engine();
        foreach (string name in new[] { "numbers.js", "slips.js", "readings.js" })
            engine.Execute(WebFiles.Read(name));
        engine.Execute($"const features = {BenchSheetPage.Features(Standard).ToJsonString()};");
        engine.Execute($"const rules = {BenchSheetPage.Slips().ToJsonString()};");
        return engine;
    }

    public static Arbitrary<(Feature, double)> Readings =>
        (
            from feature in Gen.Elements(Standard.Features.Where(f => f.Unit == "mm").ToArray())
            from other in Gen.Elements(Standard.Features.Where(f => f.Unit == "mm").ToArray())
            from factor in Gen.Elements(1, 1, 1 / 25.4, 25.4, 10, 100, 0.1, 0.01, 1.21, 0.79, 1.7)
            from swap in Gen.Elements(false, false, true)
            from noise in Gen.Choose(-60, 60)
            from finest in Gen.Elements(100, 1000)
            let value = (swap ? other : feature).Nominal * factor * (1 + noise / 1000.0)
            let rounded = Math.Round(value * finest) / finest
            where rounded is > 0 and <= 1000
            select (feature, rounded)
        ).ToArbitrary();

    [Property(MaxTest = 400, Replay = "(20261125,1)")]
    public Property SlipsAreThoseOfPredict() =>
        Prop.ForAll(
            Readings,
            ((Feature Feature, double Value) r) =>
            {
                string shown = r.Value.ToString("R", CultureInfo.InvariantCulture);
                string file =
                    "# instrument cal resolution=0.01\nfeature,value,unit,instrument\nspan.x,40.02,,cal\n"
                    + $"box3.outside.x,16.02,,cal\n{r.Feature.Id},{shown},,cal\n";
                Finding? said = ClearancePrediction
                    .Of(Standard.Features, ReadingsFile.Parse(file))
                    .Findings.FirstOrDefault(f => f.Rule is "reading-far-off" or "doubled-zero");
                string call = $"features.find((f) => f.id === \"{r.Feature.Id}\"), {shown}, features, rules, 0.01";
                string rule = Script.Evaluate($"(findSlip({call}) || {{ rule: \"\" }}).rule").AsString(),
                    text = Script.Evaluate($"(findSlip({call}) || {{ text: \"\" }}).text").AsString();
                Assert.Equal(said?.Rule ?? "", rule);
                string like = text[
                    (text.IndexOf(". ", StringComparison.Ordinal) is var i and >= 0 ? i + 2 : text.Length)..
                ];
                Assert.Contains(like, said?.Message ?? "", StringComparison.Ordinal);
                if (said?.Message.Contains("looks like", StringComparison.Ordinal) == true)
                    Assert.Contains("looks like", like, StringComparison.Ordinal);
            }
        );

    [Theory]
    [InlineData("8,03", "8.03")]
    [InlineData(" 8.03 ", "8.03")]
    [InlineData("8,03 mm", "8.03")]
    [InlineData("8", "8")]
    [InlineData("8..03", null)]
    [InlineData("1.234,5", null)]
    [InlineData("8,03,1", null)]
    [InlineData("acht", null)]
    [InlineData("8 03", null)]
    [InlineData("1e3", null)]
    public void NumbersTakeCommaOrPoint(string typed, string? number)
    {
        Script.SetValue("typed", typed);
        Assert.Equal(number ?? "none", Script.Evaluate("(parseReading(typed) || { text: \"none\" }).text").AsString());
    }

    [Fact]
    public void InchesAreReadAsInches()
    {
        Script.SetValue("typed", "0,315 in");
        Assert.Equal(8.001, Script.Evaluate("millimetres(parseReading(typed))").AsNumber(), 9);
    }

    [Property(MaxTest = 200, Replay = "(20261125,3)")]
    public void WhatIsSavedIsReadBack(NonNull<string> note, NonNull<string> printer)
    {
        Script.SetValue("note", note.Get);
        Script.SetValue("printer", printer.Get);
        string text = Script
            .Evaluate(
                """
                readingsText({ digest: "0123456789abcdef", temperature: "23", state: "dry", resolution: "0.01", mpe: "0.02",
                  settings: [["printer", printer]], rows: [
                    { feature: "box1.outside.x", value: "8.03", unit: "mm", instrument: "cal", note },
                    { feature: "column3.stood", value: "plate" }, { feature: "slots.open", value: "4", note } ] })
                """
            )
            .AsString();
        ReadingSet set = ReadingsFile.Parse(text);
        Assert.Equal(["box1.outside.x", "column3.stood", "slots.open"], set.Readings.Select(r => $"{r.Feature}"));
        Assert.Equal(8.03, set.Readings[0].Value, 12);
        Assert.Equal((23, PartState.Dry, "0123456789abcdef"), (set.Temperature, set.State, set.Digest));
        Assert.Equal(0.01, set.InstrumentOf("cal").Resolution);
        Assert.DoesNotContain(text.Split('\n'), l => l.Length > 0 && "=+-@".Contains(l[0], StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("@cmd", "'@cmd")]
    [InlineData("say \"8\", then; more", "say \"8\", then; more")]
    [InlineData("two\r\nlines\u2028three", "two lines three")]
    [InlineData("<b>\u202Eright to left", "<b>\u202Eright to left")]
    public void NotesStayText(string typed, string read)
    {
        Script.SetValue("note", typed);
        string text = Script
            .Evaluate(
                "readingsText({ digest: \"0123456789abcdef\", resolution: \"0.01\", settings: [], rows: "
                    + "[{ feature: \"box1.outside.x\", value: \"8\", unit: \"mm\", instrument: \"cal\", note }] })"
            )
            .AsString();
        Assert.Equal(read, ReadingsFile.Parse(text).Readings[0].Note);
    }
}
