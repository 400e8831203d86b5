using CalibGeom.Testing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Light.Tests.Bench;

/// <summary>A caliper errs as it is said to.</summary>
public class SimulatedCaliperTests
{
    private static readonly FeatureTable Standard = TestObject.Of(Presets.Standard).Features;

    private static readonly KnownPrint Print = new(Standard) { GrowthX = 0.02, GrowthY = 0.01 };

    [Fact]
    public void ScatterAloneIsThatOfTheInstrument()
    {
        var rough = new Instrument("cal", 0, outsideError: 0, insideError: 0, depthError: 0, repeatability: 0.02);
        double[] errors = Errors(Print.Read(new SimulatedCaliper(7, rough, form: 0), seed: 3, repeats: 20));
        Assert.Equal(18 * 20, errors.Length);
        // Of 360 draws the standard deviation is known to 4 %, the mean to 0.001.
        Assert.Equal(0.02, Math.Sqrt(errors.Average(e => e * e)), 0.02 * 0.12);
        Assert.Equal(0, errors.Average(), 0.003);
    }

    [Fact]
    public void AJawHasOneErrorForAllThatItReads()
    {
        var biased = new Instrument("cal", 0, repeatability: 0);
        var outside = new List<double>();
        foreach (ulong seed in Enumerable.Range(1, 200).Select(n => (ulong)n))
        {
            ReadingSet readings = Print.Read(new SimulatedCaliper(seed, biased, form: 0));
            var byJaw = Sizes(readings).ToLookup(r => Standard.Find(r.Feature)!.Faces, ErrorOf);
            Assert.All(byJaw[FaceKind.Outside], e => Assert.Equal(byJaw[FaceKind.Outside].First(), e, 1e-9));
            Assert.All(byJaw[FaceKind.Inside], e => Assert.Equal(byJaw[FaceKind.Inside].First(), e, 1e-9));
            outside.Add(byJaw[FaceKind.Outside].First());
        }
        // Of 200 draws the standard deviation is known to 5 %.
        Assert.Equal(
            Instrument.DefaultOutsideError,
            Math.Sqrt(outside.Average(e => e * e)),
            Instrument.DefaultOutsideError * 0.15
        );
    }

    [Fact]
    public void AnInstrumentOfOneJawReadsAllWithIt()
    {
        var rod = new Instrument("rod", 0, outsideError: 0, insideError: 0, repeatability: 0, jaw: Jaw.Depth);
        double[] errors = Errors(Print.Read(new SimulatedCaliper(5, rod, form: 0)));
        Assert.NotEqual(0, errors[0], 1e-6);
        Assert.All(errors, e => Assert.Equal(errors[0], e, 1e-9));
    }

    [Fact]
    public void ADisplayShowsWholeSteps()
    {
        ReadingSet readings = Print.Read(new SimulatedCaliper(2, new Instrument("cal", resolution: 0.05)), seed: 4);
        Assert.All(Sizes(readings), r => Assert.Equal(Math.Round(r.Value / 0.05), r.Value / 0.05, 1e-9));
        Assert.All(Sizes(readings), r => Assert.Equal("cal", r.Instrument));
        Assert.Equal(0.05, readings.InstrumentOf("cal").Resolution);
    }

    [Fact]
    public void SeedsDecideAlone()
    {
        var caliper = new SimulatedCaliper(2);
        Assert.Equal(Print.Read(caliper, 5).Readings, Print.Read(new SimulatedCaliper(2), 5).Readings);
        Assert.NotEqual(Print.Read(caliper, 5).Readings, Print.Read(caliper, 6).Readings);
        Assert.NotEqual(Print.Read(caliper, 5).Readings, Print.Read(new SimulatedCaliper(3), 5).Readings);
    }

    /// <summary>
    /// Of 100 people at least 88 must be right for 95 % to be believed (fewer come by chance 0.4 times in a hundred,
    /// binomial).
    /// </summary>
    [Fact]
    public void PredictionsFindTheTruthAsOftenAsTheySay()
    {
        // Sizes alone, and no search for burrs or slips, which nobody here makes: both cost time.
        var plain = new PredictionOptions { BurrError = 0, Robust = false };
        int right = Enumerable
            .Range(1, 100)
            .Select(n => (ulong)n)
            .Count(n =>
                ClearancePrediction
                    .Of(Standard, new ReadingSet(Sizes(Print.Read(new SimulatedCaliper(n), n, 2))), plain)
                    .Joints[0]
                    .Axes[0]
                    .Clearance.Interval.Contains(Print.ClearanceOf("joint1.fit", "x"))
            );
        Assert.InRange(right, 88, 100);
    }

    [Fact]
    public void NonsenseIsRefused()
    {
        var caliper = new SimulatedCaliper();
        var random = new SeededRandom(1);
        FeatureId span = FeatureId.Parse("span.x");
        Assert.Throws<ArgumentException>(() => new SimulatedCaliper(form: -0.1));
        Assert.ThrowsAny<ArgumentException>(() => caliper.Read(span, FaceKind.Outside, 40, random, 21));
        Assert.Throws<ArgumentException>(() => caliper.Read(span, FaceKind.Outside, 2000, random));
        Assert.Throws<ArgumentException>(() => caliper.Feel(FeatureId.Parse("joint1.fit"), [], random));
    }

    private static IEnumerable<Reading> Sizes(ReadingSet set) => set.Readings.Where(r => r.Kind == ReadingKind.Size);

    private static double[] Errors(ReadingSet set) => [.. Sizes(set).Select(ErrorOf)];

    private static double ErrorOf(Reading reading) => reading.Value - Print.SizeOf(reading.Feature);
}
