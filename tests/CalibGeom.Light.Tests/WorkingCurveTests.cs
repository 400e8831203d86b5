using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class WorkingCurveTests
{
    private static readonly WorkingCurve Curve = new(0.15, 8);

    // CHECKS.md 4.3, COMPUTED, Dp = 0.15 mm, Ec = 8 mJ/cm2.
    [Theory]
    [InlineData(8, 0)]
    [InlineData(10, 0.0334715327)]
    [InlineData(16, 0.1039720771)]
    [InlineData(20, 0.1374436098)]
    [InlineData(21.746254627672, 0.15)]
    [InlineData(40, 0.2414156869)]
    [InlineData(80, 0.3453877639)]
    public void DepthFollowsTheLogarithmOfDose(double dose, double depth) =>
        Assert.Equal(depth, Curve.Depth(dose), 1e-9);

    // CHECKS.md 4.3, COMPUTED.
    [Fact]
    public void ADepthNeedsItsDose() => Assert.Equal(12.7573580658, Curve.DoseFor(0.07), 1e-9);

    [Fact]
    public void TwoPointsGiveTheCurve()
    {
        // CHECKS.md 4.3, COMPUTED.
        WorkingCurve curve = WorkingCurve.Through(10, 0.05, 40, 0.25);
        Assert.Equal(0.144269504089, curve.PenetrationDepth, 1e-9);
        Assert.Equal(7.07106781187, curve.CriticalDose, 1e-9);
    }

    [Property(MaxTest = 100)]
    public Property AnyTwoPointsOfACurveGiveItBack() =>
        Prop.ForAll(
            Gen.Choose(1, 100).Select(n => n / 100.0).ToArbitrary(),
            Gen.Choose(11, 100).Select(n => n / 10.0).ToArbitrary(),
            (depth, factor) =>
            {
                var curve = new WorkingCurve(depth, 8);
                WorkingCurve back = WorkingCurve.Through(10, curve.Depth(10), 10 * factor, curve.Depth(10 * factor));
                return Math.Abs(back.PenetrationDepth / depth - 1) < 1e-9 && Math.Abs(back.CriticalDose / 8 - 1) < 1e-9;
            }
        );

    [Fact]
    public void OverlappingLinesCureDeeper()
    {
        // Gibson, Rosen, Stucker (2015) p. 93 (READ): Dp 5.8 mil, spacing 6 mil, W0 5 mil: EP/Emax = 1.1123, and Cd1 =
        // 3 mil needs Cd0 = 2.383 mil.
        const double mil = 0.0254;
        var beam = new GaussianBlur(5 * mil / 2);
        double ratio = Enumerable.Range(-4, 9).Sum(k => beam.LineDensity(k * 6 * mil)) / beam.LineDensity(0);
        Assert.Equal(1.1123, ratio, 5e-4);
        Assert.Equal(1.11228938469, ratio, 1e-9);
        var curve = new WorkingCurve(5.8 * mil, 10);
        double single = curve.DoseFor(3 * mil) / ratio;
        Assert.Equal(2.383, curve.Depth(single) / mil, 5e-4);
        Assert.Equal(2.38276168, curve.Depth(single) / mil, 1e-8);
    }

    // CHECKS.md 4.1 and 4.3, COMPUTED: Lw = W0 sqrt(2 Cd / Dp) with W0 = 0.125 mm.
    [Theory]
    [InlineData(0.5, 0.125)]
    [InlineData(1, 0.1767766953)]
    [InlineData(2, 0.25)]
    [InlineData(3, 0.3061862178)]
    public void ACuredLineIsAsWideAsPublished(double depths, double width)
    {
        var beam = new GaussianBlur(0.125 / 2);
        double peak = Curve.DoseFor(depths * 0.15);
        Assert.Equal(Curve.CriticalDose, peak * beam.LineDensity(width / 2) / beam.LineDensity(0), 1e-7);
    }

    [Fact]
    public void APublishedFormulationGivesAPlausibleDepth()
    {
        // CHECKS.md 4.4, COMPUTED from Montgomery et al., Extreme Mech. Lett. 53 (2022) 101714 (READ-2ND): 7501.5 1/m
        // gives Dp = 133.307 um.
        double depth = 1000 / (45.83 * 2.651 + 0.06 * 1.23e5);
        Assert.Equal(0.133307, depth, 1e-6);
        var light = new LayerLight(new WorkingCurve(depth, 8), 4.108, 6, 0.05);
        Assert.InRange(light.PrintThrough(), 0.05, 0.35);
        Assert.InRange(new GaussianBlur(0.0177).EdgeDistance(1 / light.WallRatio()), 0.01, 0.03);
    }

    [Theory]
    [InlineData(0, 8)]
    [InlineData(11, 8)]
    [InlineData(0.1, 0)]
    [InlineData(0.1, double.NaN)]
    public void ConstantsOutOfRangeAreRefused(double depth, double dose) =>
        Assert.Throws<ArgumentException>(() => new WorkingCurve(depth, dose));

    [Theory]
    [InlineData(10, 0.05, 10, 0.25)]
    [InlineData(10, 0.05, 40, 0.05)]
    [InlineData(0, 0.05, 40, 0.25)]
    public void TwoPointsMustRise(double e1, double c1, double e2, double c2) =>
        Assert.Throws<ArgumentException>(() => WorkingCurve.Through(e1, c1, e2, c2));
}
