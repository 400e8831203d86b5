using CalibGeom.Dose;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Exposures;
using CalibGeom.Verification.Readings;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Exposures;

public class VirtualPrintTests
{
    private static readonly TestObject Made = TestObjectBuilder.Build(new TestObjectSpec());
    private static readonly LayerLight Light = new(new WorkingCurve(0.12, 8), 4, 2.5, 0.05);

    [Property(MaxTest = 40)]
    public Property PredictBracketsTheSqueezeThatWasSet() => Prop.ForAll(Gen.Choose(0, 180).ToArbitrary(), n =>
    {
        double squeeze = n / 100.0;
        IReadOnlyList<Reading> readings = Read(new LowestLayers(squeeze));
        Bracket found = ClearancePrediction.From(Made.Features, new ReadingSet(readings)).Squeeze!;
        return found.Low <= squeeze && squeeze <= found.High;
    });

    [Property(MaxTest = 40)]
    public Property MoreSqueezeClosesMoreSlots() => Prop.ForAll(Gen.Choose(0, 300).Two().ToArbitrary(), pair =>
        Open(Math.Min(pair.Item1, pair.Item2)) >= Open(Math.Max(pair.Item1, pair.Item2)));

    [Fact]
    public void UnderAThickRoofTheTabsPrintThroughIsThatOfTheComb()
    {
        var tab = new SqueezeSpec();
        Assert.Equal(Light.PrintThrough(), new LowestLayers().PrintThrough(tab, 5, Light), 1e-9);
        // A bar of 0.3 mm lets through less light: six layers of q = exp(-0.05 / 0.12), and hardly any from beyond the next slot.
        double bar = Light.PrintThrough(6), first = new LowestLayers().PrintThrough(tab, 1, Light);
        Assert.InRange(first, bar, bar + 0.12 * Math.Exp(-0.8 / 0.12) * 2);
    }

    [Fact]
    public void BaseLayersCloseOnlySlotsBelowTheirLast()
    {
        var tab = new SqueezeSpec();
        // The roof of the first slot lies at 0.8 mm: 16 layers end there, the 17th is the first above it.
        double usual = new LowestLayers(0, 0).PrintThrough(tab, 1, Light);
        Assert.Equal(usual, new LowestLayers(0, 16, 60).PrintThrough(tab, 1, Light), 1e-12);
        Assert.True(new LowestLayers(0, 17, 60).PrintThrough(tab, 1, Light) > usual + 0.1);
        Assert.Equal(4, new LowestLayers(0, 22, 200).OpenSlots(tab, Light));
    }

    [Fact]
    public void SqueezeTakesFromThePlinthAndLightFromTheSlots()
    {
        double Value(LowestLayers? lowest, string id) => Read(lowest).Single(r => r.Feature == id).Value;
        Assert.Equal(0.2, Value(null, "plinth.thickness") - Value(new LowestLayers(0.2), "plinth.thickness"), 2e-6);
        Assert.Equal(0.8 - Light.PrintThrough(), Value(null, "slot8.height"), 2e-6);
        Assert.DoesNotContain(Read(null, 5), r => r.Feature == "slot1.height");
        Assert.Equal(0.5 - Light.PrintThrough(), Value(null, "squeeze.height"), 2e-6);
    }

    [Fact]
    public void ImpossibleLayersAndRestsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => new LowestLayers(-0.1));
        Assert.Throws<ArgumentException>(() => new LowestLayers(baseLayers: -1));
        Assert.Throws<ArgumentException>(() => new LowestLayers(baseTime: double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LowestLayers().PrintThrough(new SqueezeSpec(), 6, Light));
        Assert.Throws<ArgumentException>(() => new RestLaw(time: 0));
        Assert.Throws<ArgumentException>(() => new RestLaw(-0.001));
    }

    private static int Open(int hundredths) => new LowestLayers(hundredths / 100.0).OpenSlots(new SqueezeSpec(), Light);

    private static IReadOnlyList<Reading> Read(LowestLayers? lowest, double time = 2.5) =>
        new VirtualPrint(Made, new PrintedObject(Made, new GaussianBlur(0.02), new LayerLight(Light.Curve, 4, time, 0.05)), new SurvivalLaw(), lowest).Read();
}
