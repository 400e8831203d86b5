using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class StripMaskTests
{
    private static readonly double[] Ratios = [1.5, 2, 3, 4, 6];

    // CHECKS.md 4.3, COMPUTED: printed width of a bar in units of sigma; NaN = does not print.
    [Theory]
    [InlineData(1, double.NaN, double.NaN, 1.098442556, 1.925535091, 2.688740539)]
    [InlineData(2, 0.517533884, 1.866541199, 2.817642625, 3.324658636, 3.922618594)]
    [InlineData(3, 2.109214352, 2.993156182, 3.85979425, 4.348228515, 4.934552184)]
    [InlineData(4, 3.137558915, 3.999841171, 4.861428768, 5.348970227, 5.934840417)]
    [InlineData(6, 5.138545331, 5.999999995, 6.861454598, 7.3489795, 7.934843132)]
    [InlineData(10, 9.138545401, 10, 10.8614546, 11.3489795, 11.93484313)]
    public void ABarPrintsAsWideAsComputed(double width, double a, double b, double c, double d, double e)
    {
        var blur = new GaussianBlur(0.02);
        double[] expected = [a, b, c, d, e];
        for (int i = 0; i < Ratios.Length; i++)
        {
            double? printed = StripMask.BarWidth(blur, width * 0.02, Ratios[i]);
            if (double.IsNaN(expected[i]))
                Assert.Null(printed);
            else
                Assert.Equal(expected[i], printed!.Value / 0.02, 6e-9);
        }
    }

    // CHECKS.md 4.3, COMPUTED: the least E0/Ec at which a bar prints at all.
    [Theory]
    [InlineData(1, 2.611478)]
    [InlineData(2, 1.4647948)]
    [InlineData(3, 1.1542205)]
    [InlineData(4, 1.0476692)]
    [InlineData(6, 1.0027071)]
    public void ABarNeedsALeastDose(double width, double least)
    {
        var blur = new GaussianBlur(1 / 64.0);
        Assert.Null(StripMask.BarWidth(blur, width / 64.0, least * (1 - 1e-6)));
        Assert.NotNull(StripMask.BarWidth(blur, width / 64.0, least * (1 + 1e-6)));
    }

    [Property(MaxTest = 100)]
    public Property ASlotIsTheComplementOfABar() =>
        Prop.ForAll(
            Cases(),
            c =>
            {
                var blur = new GaussianBlur(0.02);
                double? bar = StripMask.BarWidth(blur, c.Width, 1 / (1 - 1 / c.Ratio));
                double? between = new StripMask(blur, -50, -c.Width / 2, c.Width / 2, 50).Boundary(2, c.Ratio) * 2;
                return between.HasValue == bar.HasValue
                    && (between is null || Math.Abs(between.Value - bar!.Value) < 1e-9);
            }
        );

    [Property(MaxTest = 100)]
    public Property AWideBarGrowsByTheEdgeAlone() =>
        Prop.ForAll(
            Cases(),
            c =>
            {
                var blur = new GaussianBlur(0.02);
                double printed = StripMask.BarWidth(blur, c.Width + 0.4, c.Ratio)!.Value;
                return Math.Abs(printed - c.Width - 0.4 - 2 * blur.EdgeDistance(1 / c.Ratio)) < 1e-9;
            }
        );

    [Fact]
    public void HeavyTailsReachAcrossAWall()
    {
        var gauss = new StripMask(new GaussianBlur(0.02), -4, -2.5, 2.5, 4);
        var lorentz = new StripMask(new LorentzBlur(0.02), -4, -2.5, 2.5, 4);
        Assert.True(gauss.Share(0) < 1e-15);
        Assert.InRange(lorentz.Share(0), 1e-3, 2e-3);
        Assert.Equal(gauss.Boundary(3, 4)!.Value, -gauss.Boundary(0, 4)!.Value, 1e-12);
    }

    [Theory]
    [InlineData(new[] { 0.0 })]
    [InlineData(new double[0])]
    [InlineData(new[] { 1.0, 0.5 })]
    [InlineData(new[] { 0.0, double.NaN })]
    public void EdgesThatDoNotRiseAreRefused(double[] edges) =>
        Assert.Throws<ArgumentException>(() => new StripMask(new GaussianBlur(0.02), edges));

    [Fact]
    public void AnEdgeThatIsNotThereIsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => StripMask.Bar(new GaussianBlur(0.02), 1).Boundary(2, 3));

    private static Arbitrary<(double Width, double Ratio)> Cases() =>
        (
            from width in Gen.Choose(10, 1000)
            from ratio in Gen.Choose(120, 1000)
            select (width / 1000.0, ratio / 100.0)
        ).ToArbitrary();
}
