using CalibGeom.OwnPart;
using CalibGeom.Testing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

/// <summary>A part of a developer's own, from the spec over simulated readings to its predicted clearance.</summary>
public class OwnPartJourneyTests
{
    private static readonly FeatureId Fit = FeatureId.Parse("keyway.fit");

    private static readonly VirtualBench Bench = new();

    private static readonly ExposureSettings Settings = new(2.5);

    [Property(MaxTest = 10)]
    public Property ItsClearanceComesBackFromItsSizes() =>
        Prop.ForAll(
            Gen.Choose(20, 45).Zip(Gen.Choose(4, 15)).ToArbitrary(),
            n =>
            {
                (double key, double clearance) = (n.Item1 / 10.0, n.Item2 / 100.0);
                TestObject made = With(new Keyway(key, key + 2 * clearance), alone: true);
                double wanted = Clearance(Bench.Print(made, Settings));
                var sizes = new ReadingSet(Bench.Read(made, Settings).Readings.Where(r => r.Kind == ReadingKind.Size));
                AxisClearance found = ClearancePrediction.Of(made.Features, sizes).Joints.Single().Axes.Single();
                return Math.Abs(found.Design - clearance) < 1e-9
                    && Math.Abs(found.Direct!.Value - wanted) < 1e-9
                    && found.Clearance.Interval.Low < wanted
                    && wanted < found.Clearance.Interval.High;
            }
        );

    [Fact]
    public void ItIsFeltAndLoggedLikeOurs()
    {
        TestObject made = With(new Keyway(3, 3.2), alone: true);
        ReadingSet readings = Bench.Read(made, Settings);
        Assert.Equal(FeltFit.Rattles, Assert.Single(readings.Readings, r => r.Id == Fit).Fit);
        var found = ClearancePrediction.Of(made.Features, readings);
        Assert.Equal([FeltFit.Rattles], Assert.Single(found.Joints).Felt);
        Assert.StartsWith(
            "keyway should rattle",
            Assert.Single(PredictionText.Sentences(found)),
            StringComparison.Ordinal
        );
        JointOutcome logged = Assert.Single(Bench.TrialOf(made, Settings).Joints);
        Assert.Equal(("keyway", FeltFit.Rattles), (logged.Id, logged.Fit));
        Assert.Equal(0.1, logged.Designed, 1e-9);
    }

    [Fact]
    public void BesideBoxesEveryFitIsFelt()
    {
        TestObject made = With(new Keyway(3, 3.2), alone: false);
        Assert.Equal(
            ["joint1.fit", "joint2.fit", "keyway.fit"],
            Bench.Read(made, Settings).Readings.Where(r => r.Fit is not null).Select(r => r.Id.ToString())
        );
    }

    [Fact]
    public void PixelsAndClosedFormsAgreeOnIt()
    {
        TestObject made = With(new Keyway(3, 3.2), alone: true);
        PrintedObject closed = Bench.Print(made, Settings);
        var raster = new RasterPrint(made, RasterPrint.LightOf(made, 0.02, closed.Blur, closed.Light));
        // Each of the two widths may gain or lose a pixel.
        Assert.Equal(Clearance(closed), Clearance(raster), 0.02);
    }

    private static double Clearance(PredictedPrint print) => print.Clearances().Single(c => c.Fit == Fit).Value!.Value;

    private static TestObject With(Keyway part, bool alone)
    {
        var whole = new TestObjectSpec { OwnParts = [part] };
        return TestObject.Of(
            alone ? whole with { Nest = null, Spans = null, Columns = null, Slots = null, Squeeze = null } : whole
        );
    }
}
