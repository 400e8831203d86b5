using System.Collections.Concurrent;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class RasterPrintTests
{
    private static readonly TestObject Standard = TestObject.Of(Presets.Standard);
    private static readonly TestObject Snapped = TestObject.Of(Presets.Standard with { Process = new ProcessSpec() });

    private static readonly TestObject Witness = TestObject.Of(Presets.Witness);
    private static readonly ConcurrentDictionary<(TestObject, double, bool), MaskStack> Masks = new();

    [Theory]
    [InlineData(1.5)]
    [InlineData(3)]
    public void OnWholePixelsTheClosedFormsHold(double time)
    {
        (RasterPrint raster, PrintedObject closed) = Print(Snapped, time);
        Dictionary<FeatureId, double?> expected = closed.Sizes().ToDictionary(s => s.Feature, s => s.Value);
        int compared = 0;
        foreach (PrintedSize size in raster.Sizes())
            if (
                size.Feature.Size is KnownFeatures.Outside or KnownFeatures.Inside
                || size.Feature.Part == KnownFeatures.Span
            )
            {
                Assert.Equal(expected[size.Feature]!.Value, size.Value!.Value, 2e-5);
                compared++;
            }
        Assert.Equal(14, compared);
    }

    [Property(MaxTest = 6)]
    public Property OffPixelsAFaceMovesByHalfAPixelAtMost() =>
        Prop.ForAll(
            Gen.Choose(15, 50).ToArbitrary(),
            Gen.Choose(20, 50).ToArbitrary(),
            (tenths, microns) =>
            {
                double pitch = microns / 1000.0;
                (RasterPrint raster, PrintedObject closed) = Print(Witness, tenths / 10.0, pitch);
                Dictionary<FeatureId, double?> expected = closed.Sizes().ToDictionary(s => s.Feature, s => s.Value);
                return raster
                    .Sizes()
                    .Where(s => s.Feature.Part == KnownFeatures.Box && s.Feature.Size != KnownFeatures.Height)
                    .All(s => Math.Abs(s.Value!.Value - expected[s.Feature]!.Value) <= pitch + 2e-5);
            }
        );

    /// <summary>
    /// Found in the dose of the masks, not from the closed form. One exposure alone must cure a layer through: its last
    /// one has no light from later ones, and else comes off, which the closed form does not tell.
    /// </summary>
    [Theory]
    [InlineData(2.2)]
    [InlineData(3)]
    [InlineData(5)]
    public void ABridgeIsThickerByThePrintThrough(double time)
    {
        (RasterPrint raster, PrintedObject closed) = Print(Witness, time);
        double Size(PredictedPrint print) =>
            print.Sizes().Single(s => s.Feature == KnownFeatures.BridgeThickness).Value!.Value;
        Assert.Equal(Size(closed), Size(raster), 1e-4);
        Assert.Equal(2 + closed.Light.PrintThrough(), Size(raster), 1e-4);
        Assert.InRange(Size(raster), 2.05, 2.5);
    }

    [Fact]
    public void TunnelsLoseThePrintThroughOfTheirLayers()
    {
        (RasterPrint raster, PrintedObject closed) = Print(Standard, 2.5);
        double through = closed.Light.PrintThrough();
        double? Size(PredictedPrint print, string id) => print.Sizes().Single(s => s.Feature == id).Value;
        // 0.25, 0.4, 0.5 and 0.8 mm are whole layers; 0.315 mm prints as six of them, 0.63 mm as thirteen.
        foreach (
            (int slot, double height) in new[] { (3, 0.25), (4, 0.30), (5, 0.40), (6, 0.50), (7, 0.65), (8, 0.80) }
        )
            Assert.Equal(height - through, Size(raster, $"slot{slot}.height")!.Value, 1e-4);
        Assert.Equal(8, raster.OpenSlots());
        Assert.Equal(2.5, Size(raster, "plinth.thickness")!.Value, 1e-6);
        // Graded slots do not begin and end on whole layers: the raster rounds each end to half a layer.
        Assert.Equal(closed.SqueezeGaps().ToArray(), raster.SqueezeGaps().ToArray(), (a, b) => Math.Abs(a - b) < 0.05);
        Assert.True(Print(Standard, 8).Raster.OpenSlots() < 8);
    }

    [Fact]
    public void AlmostRoundColumnsKeepTheirMeanDiameter()
    {
        (RasterPrint raster, PrintedObject closed) = Print(Standard, 2.5, grey: true);
        Dictionary<FeatureId, double?> expected = closed.Sizes().ToDictionary(s => s.Feature, s => s.Value);
        Assert.All(
            raster.Sizes().Where(s => s.Feature.Part == KnownFeatures.Column),
            s => Assert.Equal(expected[s.Feature]!.Value, s.Value!.Value, 0.008)
        );
        Assert.All(Standard.Columns, c => Assert.Equal(closed.AxisRatio(c), raster.AxisRatio(c), 1e-2));
    }

    [Fact]
    public void ScaleRetreatAndClearanceFollowFromTheSizes()
    {
        LightDose dose = Light(Snapped, 2.5);
        RasterPrint plain = new(Snapped, dose),
            other = new(Snapped, dose, scale: -0.01, retreat: 0.004);
        double Size(RasterPrint print, string id) => print.Sizes().Single(s => s.Feature == id).Value!.Value;
        Assert.Equal(
            Size(plain, "box1.outside.x") - 0.008 - 0.01 * Snapped.Boxes[0].Outside.X,
            Size(other, "box1.outside.x"),
            1e-9
        );
        Assert.Equal(
            Size(plain, "box2.inside.x") + 0.008 - 0.01 * Snapped.Boxes[1].Inside.X,
            Size(other, "box2.inside.x"),
            1e-9
        );
        Assert.Equal(
            (Size(plain, "box2.inside.y") - Size(plain, "box1.outside.y")) / 2,
            plain.Clearances().First(c => c.Axis == "y").Value!.Value,
            1e-12
        );
    }

    [Theory]
    [InlineData(0.04)]
    [InlineData(-0.08)]
    public void AnEdgeOffsetOfWholePixelsMovesEveryFaceByThese(double offset)
    {
        TestObject snapped = TestObject.Of(Presets.Witness with { Process = new ProcessSpec() });
        LightDose dose = RasterPrint.LightOf(snapped, 0.04, new GaussianBlur(0.02), Layers(2.5), edgeOffset: offset);
        Dictionary<FeatureId, double?> expected = new PrintedObject(snapped, dose.Blur, dose.Light, edgeOffset: offset)
            .Sizes()
            .ToDictionary(s => s.Feature, s => s.Value);
        PrintedSize[] faces =
        [
            .. new RasterPrint(snapped, dose)
                .Sizes()
                .Where(s => s.Feature.Size is KnownFeatures.Outside or KnownFeatures.Inside),
        ];
        Assert.NotEmpty(faces);
        Assert.All(faces, s => Assert.Equal(expected[s.Feature]!.Value, s.Value!.Value, 1e-4));
    }

    [Fact]
    public void AMissingDoseIsNamed() =>
        Assert.Equal("dose", Assert.Throws<ArgumentNullException>(() => new RasterPrint(Standard, null!)).ParamName);

    [Fact]
    public void ALayerOfDosesIsNotReadOnceTheNextIsThere()
    {
        IReadOnlyList<DoseLayer> layers = Print(Standard, 2.5).Raster.Dose.Layers().Take(2).ToList();
        Assert.NotEqual(0, layers[1].Values.Length);
        Assert.Throws<InvalidOperationException>(() => layers[0].Values.Length);
    }

    [Fact]
    public void TooLittleLightPrintsNothing()
    {
        RasterPrint dark = Print(Standard, 0.2).Raster;
        Assert.All(
            dark.Sizes().Where(s => s.Feature is { Item: "box1", Size: KnownFeatures.Outside }),
            s => Assert.Null(s.Value)
        );
        Assert.Null(dark.Clearances()[0].Value);
        Assert.Equal(0, dark.OpenSlots());
    }

    [Fact]
    public void ATiltedObjectIsRefused()
    {
        TestObject tilted = TestObject.Of(new TestObjectSpec { Tilt = new TiltSpec { Angle = 10 } });
        Assert.Contains(
            "tilt",
            Assert.Throws<ArgumentException>(() => new RasterPrint(tilted, Light(Standard, 2.5))).Message,
            StringComparison.Ordinal
        );
    }

    private static (RasterPrint Raster, PrintedObject Closed) Print(
        TestObject made,
        double time,
        double pitch = 0.04,
        bool grey = false
    )
    {
        LightDose dose = Light(made, time, pitch, grey);
        return (new RasterPrint(made, dose), new PrintedObject(made, dose.Blur, dose.Light));
    }

    // The masks of one object and pitch serve all exposures.
    private static LightDose Light(TestObject made, double time, double pitch = 0.04, bool grey = false) =>
        new(
            Masks.GetOrAdd(
                (made, pitch, grey),
                _ => RasterPrint.LightOf(made, pitch, new GaussianBlur(0.02), Layers(time), grey).Masks
            ),
            new GaussianBlur(0.02),
            Layers(time)
        );

    private static LayerLight Layers(double time) => new(new WorkingCurve(0.12, 8), 4, time, 0.05, 5, 25);
}
