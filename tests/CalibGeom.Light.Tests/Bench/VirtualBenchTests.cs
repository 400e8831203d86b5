using CalibGeom.Testing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests.Bench;

/// <summary>The bench answers to its settings as a printer does, and its readings are of what it printed.</summary>
public class VirtualBenchTests
{
    private static readonly TestObject Made = TestObject.Of(Presets.Standard);
    private static readonly VirtualBench Bench = new() { Resin = new WorkingCurve(0.12, 4) };

    [Property(MaxTest = 10)]
    public Property AFaultlessCaliperReadsWhatWasPrinted() =>
        Prop.ForAll(
            Gen.Choose(15, 60).Zip(Gen.Choose(0, 40)).ToArbitrary(),
            n =>
            {
                var settings = new ExposureSettings(n.Item1 / 10.0, n.Item2 / 10.0);
                var printed = Bench.Print(Made, settings).Sizes().ToDictionary(s => s.Feature, s => s.Value);
                foreach (Reading r in Bench.Read(Made, settings).Readings.Where(r => r.Kind == ReadingKind.Size))
                    Assert.Equal(printed[r.Feature], r.Value);
            }
        );

    [Property(MaxTest = 20)]
    public Property LightGrowsRestAndOffsetShrink() =>
        Prop.ForAll(
            Gen.Choose(15, 60).ToArbitrary(),
            tenths =>
            {
                double Growth(double time, double rest, double offset) =>
                    Bench.Print(Made, new ExposureSettings(time, rest, offset)).Growth!.Value;
                double time = tenths / 10.0,
                    growth = Growth(time, 0, 0);
                Assert.True(Growth(time * 1.1, 0, 0) > growth);
                Assert.Equal(growth - Bench.Rest.Retreat(2), Growth(time, 2, 0), 1e-12);
                Assert.Equal(growth - 0.03, Growth(time, 0, -0.03), 1e-12);
            }
        );

    [Fact]
    public void ATrialHoldsTheGrowthThatWasPrinted()
    {
        var settings = new ExposureSettings(2.5, 1);
        Trial exact = Bench.TrialOf(Made, settings);
        Assert.Equal(settings, exact.Settings);
        Assert.Equal(Made.Features.Digest, exact.Digest);
        Assert.Equal(Bench.Print(Made, settings).Growth!.Value, exact.GrowthX!.Value, 0.002);
        VirtualBench person = Bench with { Caliper = new SimulatedCaliper(4) };
        Trial read = person.TrialOf(Made, settings, 1);
        Assert.Equal(exact.GrowthX.Value, read.GrowthX!.Value, 0.05);
        Assert.NotEqual(read.GrowthX.Value, person.TrialOf(Made, settings, 2).GrowthX!.Value);
        Assert.Equal(read.GrowthX, person.TrialOf(Made, settings, 1).GrowthX);
    }

    [Fact]
    public void LayersAreThoseOfTheProcess()
    {
        TestObject thin = TestObject.Of(
            Presets.Standard with
            {
                Process = new ProcessSpec { LayerHeight = 0.03, BaseLayers = 7 },
            }
        );
        LayerLight light = Bench.Print(thin, new ExposureSettings(2.5)).Light;
        Assert.Equal((0.03, 7), (light.Layer, light.BaseLayers));
        Assert.Equal(0.03, Bench.TrialOf(thin, new ExposureSettings(2.5)).Conditions.Layer);
    }

    [Fact]
    public void NonsenseIsRefused()
    {
        Assert.Throws<ArgumentException>(() => Bench with { Irradiance = 0 });
        Assert.Throws<ArgumentException>(() => Bench with { Scale = 0.2 });
        Assert.Throws<ArgumentNullException>(() => Bench with { Resin = null! });
        Assert.Throws<ArgumentNullException>(() => Bench with { Caliper = null! });
        Assert.Throws<ArgumentException>(() => Bench.Read(Made, new ExposureSettings(0.01)));
    }
}
