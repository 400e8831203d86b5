using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Bridge;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class PrintedObjectTests
{
    private static readonly TestObject Standard = TestObject.Of(Presets.Standard);
    private static readonly WorkingCurve Curve = new(0.12, 8);

    [Property(MaxTest = 30)]
    public Property WideFacesGrowByTheEdgeAndClearanceLosesTwice() =>
        Prop.ForAll(
            Gen.Choose(15, 60).ToArbitrary(),
            Gen.Choose(0, 10).ToArbitrary(),
            (time, retreat) =>
            {
                var printed = new PrintedObject(
                    Standard,
                    new GaussianBlur(0.02),
                    new LayerLight(Curve, 4, time / 10.0, 0.05),
                    retreat: retreat / 1000.0
                );
                double g = printed.Growth!.Value;
                Dictionary<FeatureId, double?> sizes = printed.Sizes().ToDictionary(s => s.Feature, s => s.Value);
                bool Near(string id, double change) =>
                    Math.Abs(sizes[FeatureId.Parse(id)]!.Value - Standard.Features.Find(id)!.Nominal - change) < 1e-9;
                return Near("box1.outside.x", 2 * g)
                    && Near("box2.inside.y", -2 * g)
                    && Near("span.x", 2 * g)
                    && Near("box1.height", 0)
                    && printed
                        .Clearances()
                        .Where(c => c.Axis == "x")
                        .Zip(Standard.Joints)
                        .All(p => Math.Abs(p.First.Value!.Value - p.Second.Clearance.X + 2 * g) < 1e-9);
            }
        );

    /// <summary>
    /// Cd = Dp ln(E / Ec) of every layer above, summed by hand: a beam is thicker by what its own layers cure below it.
    /// </summary>
    [Property(MaxTest = 40)]
    public Property ABridgeIsThickerByWhatItsOwnLayersCureBelowIt() =>
        Prop.ForAll(
            Gen.Choose(12, 80).ToArbitrary(),
            Gen.Choose(5, 30).ToArbitrary(),
            Gen.Choose(100, 400).ToArbitrary(),
            (time, depth, thickness) =>
            {
                TestObject made = TestObject.Of(
                    Presets.Witness with
                    {
                        Bridge = new BridgeSpec { Thickness = thickness / 100.0 },
                    }
                );
                double dp = depth / 100.0,
                    each = 4 * time / 10.0;
                var print = new PrintedObject(
                    made,
                    new GaussianBlur(0.02),
                    new LayerLight(new WorkingCurve(dp, 8), 4, time / 10.0, 0.05)
                );
                int layers = (int)Math.Round(thickness / 5.0);
                if (layers * 5 != thickness || print.Light.WallRatio() <= 1)
                    return true;
                double dose = Enumerable.Range(0, layers).Sum(k => each * Math.Exp(-(k + 1) * 0.05 / dp)),
                    through = dp * Math.Log(dose / 8);
                double? size = print.Sizes().Single(s => s.Feature == KnownFeatures.BridgeThickness).Value;
                return Math.Abs((size ?? 0) - thickness / 100.0 - through) < 1e-9;
            }
        );

    [Fact]
    public void ScaleAndOffsetAreKeptApart()
    {
        var plain = new PrintedObject(Standard, new GaussianBlur(0.02), new LayerLight(Curve, 4, 2.5, 0.05));
        var other = new PrintedObject(
            Standard,
            new GaussianBlur(0.02),
            new LayerLight(Curve, 4, 2.5, 0.05),
            scale: -0.01,
            edgeOffset: 0.005
        );
        Assert.Equal(plain.Growth!.Value + 0.005, other.Growth!.Value, 1e-12);
        double Size(PrintedObject o, string id) => o.Sizes().Single(s => s.Feature == id).Value!.Value;
        Assert.Equal(
            Size(plain, "box1.outside.x") + 0.01 - 0.01 * Standard.Boxes[0].Outside.X,
            Size(other, "box1.outside.x"),
            1e-9
        );
    }

    [Fact]
    public void ThinColumnsAndLowSlotsGoFirst()
    {
        PrintedObject Lit(double time) => new(Standard, new GaussianBlur(0.05), new LayerLight(Curve, 4, time, 0.05));
        double?[] columns = Lit(2)
            .Sizes()
            .Where(s => s.Feature.Part == KnownFeatures.Column)
            .Select(s => s.Value)
            .ToArray();
        Assert.Equal(Standard.Columns.Count, columns.Length);
        Assert.True(columns[^1] > columns[0]);
        Assert.True(Lit(1.5).OpenSlots() > Lit(12).OpenSlots());
        Assert.Null(Lit(0.2).Growth);
        Assert.All(
            Lit(0.2).Sizes().Where(s => s.Feature is { Item: "box1", Size: KnownFeatures.Outside }),
            s => Assert.Null(s.Value)
        );
    }

    [Fact]
    public void HeavyTailsCloseThePocketMore()
    {
        var light = new LayerLight(Curve, 4, 2.5, 0.05);
        var heavy = new PrintedObject(Standard, new LorentzBlur(0.02), light);
        double pocket =
            heavy.Sizes().Single(s => s.Feature == "box1.inside.x").Value!.Value - Standard.Boxes[0].Inside.X;
        Assert.True(Math.Abs(pocket + 2 * heavy.Growth!.Value) is > 1e-5 and < 2e-3);
    }

    [Theory]
    [InlineData(0.2, 0, 0)]
    [InlineData(0, 2, 0)]
    [InlineData(0, 0, double.NaN)]
    public void ValuesOutOfRangeAreRefused(double scale, double retreat, double offset) =>
        Assert.Throws<ArgumentException>(() =>
            new PrintedObject(
                Standard,
                new GaussianBlur(0.02),
                new LayerLight(Curve, 4, 2.5, 0.05),
                scale,
                retreat,
                offset
            )
        );

    [Fact]
    public void SurvivalRisesWithDiameterAndDoseAndFallsWithLoad()
    {
        var law = new SurvivalLaw();
        var blur = new GaussianBlur(0.02);
        Assert.Equal(0.5, law.Chance(blur, 0.4, 3, 1.6), 1e-9);
        Assert.True(
            law.Chance(blur, 0.5, 3, 1.6) > 0.5
                && law.Chance(blur, 0.4, 4, 1.6) > 0.5
                && law.Chance(blur, 0.4, 3, 2.5) < 0.5
        );
        Assert.Equal(0, law.Chance(blur, 0.4, 0.9, 1.6));
        Assert.Throws<ArgumentException>(() => new SurvivalLaw(0));
        Assert.Throws<ArgumentException>(() => new SurvivalLaw(slope: -1));
        Assert.Throws<ArgumentException>(() => new SurvivalLaw(doseExponent: double.NaN));
        Assert.Throws<ArgumentException>(() => new SurvivalLaw(loadExponent: 11));
    }
}
