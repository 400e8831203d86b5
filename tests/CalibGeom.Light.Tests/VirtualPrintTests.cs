using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class VirtualPrintTests
{
    private static readonly TestObject Made = TestObject.Of(new TestObjectSpec());
    private static readonly LayerLight Light = new(new WorkingCurve(0.12, 8), 4, 2.5, 0.05);

    [Property(MaxTest = 40)]
    public Property PredictBracketsTheSqueezeThatWasSet() =>
        Prop.ForAll(
            Gen.Choose(0, 180).ToArbitrary(),
            n =>
            {
                double squeeze = n / 100.0;
                IReadOnlyList<Reading> readings = Read(squeeze);
                Bracket found = ClearancePrediction.Of(Made.Features, new ReadingSet(readings)).Squeeze!;
                return found.Low <= squeeze && squeeze <= found.High;
            }
        );

    [Property(MaxTest = 40)]
    public Property MoreSqueezeClosesMoreSlots() =>
        Prop.ForAll(
            Gen.Choose(0, 300).Two().ToArbitrary(),
            pair => Open(Math.Min(pair.Item1, pair.Item2)) >= Open(Math.Max(pair.Item1, pair.Item2))
        );

    [Fact]
    public void SqueezeTakesFromThePlinthAndLightFromTheSlots()
    {
        double Value(double squeeze, string id) => Read(squeeze).Single(r => r.Feature == id).Value;
        Assert.Equal(0.2, Value(0, "plinth.thickness") - Value(0.2, "plinth.thickness"), 2e-6);
        Assert.Equal(0.8 - Light.PrintThrough(), Value(0, "slot8.height"), 2e-6);
        Assert.DoesNotContain(Read(0, 5), r => r.Feature == "slot1.height");
        Assert.Equal(0.5 - Light.PrintThrough(), Value(0, "squeeze5.height"), 2e-6);
    }

    [Fact]
    public void ImpossibleSqueezesAndRestsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => Read(-0.1));
        Assert.Throws<ArgumentException>(() => Read(double.NaN));
        Assert.Throws<ArgumentException>(() => new RestLaw(time: 0));
        Assert.Throws<ArgumentException>(() => new RestLaw(-0.001));
    }

    private static int Open(int hundredths) =>
        (int)Read(hundredths / 100.0).Single(r => r.Feature == "squeeze.open").Value;

    private static IReadOnlyList<Reading> Read(double squeeze, double time = 2.5) =>
        new VirtualPrint(
            new PrintedObject(Made, new GaussianBlur(0.02), new LayerLight(Light.Curve, 4, time, 0.05, 5, 25)),
            new SurvivalLaw(),
            squeeze
        ).Read();
}
