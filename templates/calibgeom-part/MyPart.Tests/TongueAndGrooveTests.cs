using CalibGeom.Features;
using CalibGeom.Inspection.Topology;
using CalibGeom.Testing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace MyPart.Tests;

public class TongueAndGrooveTests
{
    private static readonly TestObject Made = TestObject.Of(
        Presets.Witness with
        {
            OwnParts = [new TongueAndGroove(tongue: 3, clearance: 0.05)],
        }
    );

    [Fact]
    public void ItCanBeMade()
    {
        Assert.DoesNotContain(Made.Findings, f => f.Severity == Severity.Error);
        Assert.True(MeshTopology.Run(Made.ToMesh()).IsClosed);
    }

    /// <summary>Grown by 0.01 mm on every edge, 0.05 mm of clearance are 0.03.</summary>
    [Fact]
    public void ItsClearanceComesBackFromReadings()
    {
        var print = new KnownPrint(Made.Features) { GrowthX = 0.01, GrowthY = 0.01 };
        AxisClearance found = Tongue(print.Read());
        Assert.Equal(0.03, print.ClearanceOf("tongue.fit", "x"), 1e-9);
        Assert.Equal(0.03, found.Direct!.Value, 1e-9);
    }

    /// <summary>An ordinary caliper errs; the interval knows.</summary>
    [Fact]
    public void ACalipersErrorsStayWithinTheInterval()
    {
        var bench = new VirtualBench { Caliper = new SimulatedCaliper(seed: 2) };
        var settings = new ExposureSettings(time: 2.5, rest: 1);
        double truth = bench.Print(Made, settings).Clearances().Single(c => c.Fit == "tongue.fit").Value!.Value;
        Assert.True(Tongue(bench.Read(Made, settings)).Clearance.Interval.Contains(truth));
    }

    private static AxisClearance Tongue(ReadingSet readings) =>
        ClearancePrediction.Of(Made.Features, readings).Joints.Single(j => j.Fit == "tongue.fit").Axes.Single();
}
