using System.Text;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.SlotComb;
using CalibGeom.TestObjects.Specs;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.TestObjects;

public class SpecJsonTests
{
    /// <summary>The names that stay stable; all values but title and process are the defaults.</summary>
    private const string Everything = """
        { "title": "DEMO GREY",
          "process": { "pixelPitch": 0.04, "layerHeight": 0.05, "plate": [150, 90, 160], "baseLayers": 5, "baseTime": 25, "snap": "pixels" },
          "plinth":  { "thickness": 2.5, "edgeChamfer": 0.8 },
          "nest":    { "sizes": [8.0, 11.2, 16.0], "clearances": [0.05, 0.05], "wall": 1.2, "gaugeBand": 6.3, "pocketDepth": 8.0 },
          "spans":   { "x": 40, "y": 25 },
          "columns": { "diameters": [0.25, 0.28, 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8], "copies": 2, "height": 6.3,
                       "headDiameter": 1.6, "pitch": 4.0, "lean": 0, "azimuth": 90 },
          "slots":   { "heights": [0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8] },
          "squeeze": { "heights": [0.1, 0.16, 0.25, 0.4, 0.5], "bar": 0.4 },
          "labels":  { "height": 0.4, "stroke": 0.4 },
          "tilt":    { "axis": "x", "angle": 0 } }
        """;

    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    [Fact]
    public void AllDefaultsAreAsDocumented() =>
        Assert.Equal(
            new TestObjectSpec { Title = "DEMO GREY", Process = new ProcessSpec() },
            SpecJson.Parse(Everything)
        );

    [Fact]
    public void AnEmptySpecIsTheStandard()
    {
        Assert.Equal(new TestObjectSpec(), SpecJson.Parse("{}"));
        Assert.Equal(new TestObjectSpec(), Presets.Standard);
        Assert.Equal(new TestObjectSpec { Process = new ProcessSpec() }, SpecJson.Parse("""{"process":{}}"""));
    }

    [Fact]
    public void TheCanonicalFormIsFixed() =>
        Assert.Equal(
            """
            {"title":"","process":null,"plinth":{"thickness":2.5,"edgeChamfer":0.8},
            "nest":{"sizes":[8,11.2,16],"clearances":[0.05,0.05],"wall":1.2,"gaugeBand":6.3,"pocketDepth":8},
            "spans":{"x":40,"y":25},
            "columns":{"diameters":[0.25,0.28,0.315,0.355,0.4,0.45,0.5,0.56,0.63,0.71,0.8],"copies":2,"height":6.3,"headDiameter":1.6,"pitch":4,"lean":0,"azimuth":90},
            "slots":{"heights":[0.16,0.2,0.25,0.315,0.4,0.5,0.63,0.8]},"squeeze":{"heights":[0.1,0.16,0.25,0.4,0.5],"bar":0.4},
            "pins":null,"walls":null,
            "labels":{"height":0.4,"stroke":0.4},"tilt":{"axis":"x","angle":0}}
            """.ReplaceLineEndings(""),
            Encoding.UTF8.GetString(SpecJson.ToCanonicalBytes(new TestObjectSpec()))
        );

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void PresetsAreReadBackIdentically(string name)
    {
        TestObjectSpec spec = Presets.Find(name)!.Spec;
        Assert.Equal(spec, SpecJson.Parse(SpecJson.ToText(spec)));
        Assert.Equal(spec, SpecJson.Parse(SpecJson.ToCommentedText(spec, "a heading")));
        Assert.Equal(spec, SpecJson.Parse(Encoding.UTF8.GetString(SpecJson.ToCanonicalBytes(spec))));
    }

    [Property(MaxTest = 100)]
    public FsCheck.Property AnySpecIsReadBackIdentically() =>
        Prop.ForAll(
            RandomSpecs.Any.ToArbitrary(),
            spec =>
                SpecJson.Parse(SpecJson.ToText(spec)).Equals(spec)
                && SpecJson.Parse(SpecJson.ToCommentedText(spec)).Equals(spec)
                && SpecDigest.Of(SpecJson.Parse(SpecJson.ToText(spec))) == SpecDigest.Of(spec)
        );

    [Fact]
    public void CommentsTrailingCommasAndTheByteOrderMarkAreRead()
    {
        byte[] bytes =
        [
            0xEF,
            0xBB,
            0xBF,
            .. Encoding.UTF8.GetBytes(
                "// one\n{ /* two */ \"$schema\": \"spec.schema.json\", \"title\": \"A\", \"slots\": null, }\n// three"
            ),
        ];
        using var stream = new MemoryStream(bytes);
        Assert.Equal(new TestObjectSpec { Title = "A", Slots = null }, SpecJson.Read(stream));
    }

    [Fact]
    public void TheDigestSeesTheSpecAndNotItsSpelling()
    {
        string digest = SpecDigest.Of(SpecJson.Parse("""{"columns":{"height":10},"title":"A"}"""));
        Assert.Matches("^[0-9a-f]{16}$", digest);
        Assert.Equal(
            digest,
            SpecDigest.Of(
                SpecJson.Parse(
                    """{ "title":"\u0041", "columns":{ "copies": 2.0, "height":1e1, "lean": -0.0 }, "process": null }"""
                )
            )
        );
        Assert.NotEqual(digest, SpecDigest.Of(SpecJson.Parse("""{"columns":{"height":10},"title":"B"}""")));
    }

    [Fact]
    public void EqualAxesAreOneNumber()
    {
        TestObjectSpec spec = SpecJson.Parse(
            """{"nest":{"sizes":[8,12,16],"clearances":[[0.1,0.1],[-0.1,0.3]]},"process":{"pixelPitch":[0.03,0.03]}}"""
        );
        Assert.Equal([0.1, new PerAxis(-0.1, 0.3)], spec.Nest!.Clearances);
        Assert.Contains("\"clearances\": [0.1, [-0.1, 0.3]]", SpecJson.ToText(spec), StringComparison.Ordinal);
        Assert.Contains("\"pixelPitch\": 0.03,", SpecJson.ToText(spec), StringComparison.Ordinal);
    }

    [Fact]
    public void ASpecLiesOverItsBasis()
    {
        TestObjectSpec witness = Presets.Witness;
        TestObjectSpec spec = SpecJson.Parse("""{"columns":{"height":8},"slots":{}}""", witness);
        Assert.Equal(witness with { Columns = witness.Columns! with { Height = 8 }, Slots = new SlotsSpec() }, spec);
    }

    [Fact]
    public void EqualClearancesFollowTheBoxes()
    {
        TestObjectSpec fine = Presets.Fine;
        Assert.Equal([0.035], SpecJson.Parse("""{"nest":{"sizes":[6.3,9]}}""", fine).Nest!.Clearances);
        Assert.Equal([0.05, 0.05, 0.05], SpecJson.Parse("""{"nest":{"sizes":[8,11.2,16,22.4]}}""").Nest!.Clearances);
        Assert.Empty(SpecJson.Parse("""{"nest":{"sizes":[8]}}""").Nest!.Clearances);
    }

    [Fact]
    public void AssignmentsAreLaidOverInOrder()
    {
        string[] assignments =
        [
            "title=Demo grey, 2",
            "columns.height=10",
            "nest.sizes=8,11.2",
            "nest.clearances=[-0.1, 0.3]",
            "nest.clearances=[[-0.1, 0.3]]",
            "slots=null",
            "process={}",
            "process.snap=none",
            "process.plate=100,80,150",
            "process.pixelPitch=0.03,0.04",
            "process.baseLayers=4",
            "columns.height=12.5",
        ];
        var expected = new TestObjectSpec
        {
            Title = "Demo grey, 2",
            Nest = new NestSpec { Sizes = [8, 11.2], Clearances = [new PerAxis(-0.1, 0.3)] },
            Columns = new ColumnsSpec { Height = 12.5 },
            Slots = null,
            Process = new ProcessSpec
            {
                Snap = PixelSnap.None,
                Plate = new PlateSize(100, 80, 150),
                PixelPitch = new PerAxis(0.03, 0.04),
                BaseLayers = 4,
            },
        };
        Assert.Equal(expected, SpecJson.With(new TestObjectSpec(), assignments));
    }
}
