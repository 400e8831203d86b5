using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class DiscMaskTests
{
    [Property(MaxTest = 60)]
    public Property TheRimIntegralAgreesWithASumOverTheDisc() =>
        Prop.ForAll(
            Cases(),
            c =>
            {
                var disc = new DiscMask(new GaussianBlur(0.02), c.Diameter);
                return Math.Abs(disc.Share(c.Distance) - ByStrips(c.Diameter / 2, c.Distance, 0.02)) < 1e-6;
            }
        );

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.4)]
    [InlineData(2)]
    public void TheAxisHasTheClosedForm(double diameter)
    {
        double sigma = 0.02;
        var disc = new DiscMask(new GaussianBlur(sigma), diameter);
        Assert.Equal(1 - Math.Exp(-diameter * diameter / (8 * sigma * sigma)), disc.Share(0), 1e-12);
        Assert.Equal(disc.AxisShare, disc.Share(0), 1e-12);
        var heavy = new DiscMask(new LorentzBlur(sigma), diameter);
        Assert.Equal(heavy.AxisShare, heavy.Share(1e-9), 1e-9);
    }

    [Property(MaxTest = 40)]
    public Property AThinnerColumnOrLessLightPrintsThinner() =>
        Prop.ForAll(
            Cases(),
            c =>
            {
                var blur = new GaussianBlur(0.02);
                double? thin = new DiscMask(blur, c.Diameter).PrintedDiameter(3),
                    thick = new DiscMask(blur, c.Diameter * 1.1).PrintedDiameter(3);
                double? bright = new DiscMask(blur, c.Diameter).PrintedDiameter(4);
                return thin is null || (thick > thin && bright > thin);
            }
        );

    [Fact]
    public void ATooThinColumnDoesNotPrint() =>
        Assert.Null(new DiscMask(new GaussianBlur(0.02), 0.02).PrintedDiameter(3));

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(101)]
    public void ADiameterOutOfRangeIsRefused(double diameter) =>
        Assert.Throws<ArgumentException>(() => new DiscMask(new GaussianBlur(0.02), diameter));

    // Strips across the disc, each a product of a line's spread and an exact bar: an independent route to the same
    // dose.
    private static double ByStrips(double radius, double distance, double sigma)
    {
        var blur = new GaussianBlur(sigma);
        const int strips = 4000;
        double sum = 0;
        for (int i = 0; i < strips; i++)
        {
            double angle = Math.PI * (i + 0.5) / strips - Math.PI / 2,
                y = radius * Math.Sin(angle),
                half = radius * Math.Cos(angle);
            double bar = blur.EdgeShare(distance - half) - blur.EdgeShare(distance + half);
            sum += blur.LineDensity(y) * bar * half * Math.PI / strips;
        }
        return sum;
    }

    private static Arbitrary<(double Diameter, double Distance)> Cases() =>
        (
            from diameter in Gen.Choose(30, 800)
            from place in Gen.Choose(0, 1300)
            select (diameter / 1000.0, place / 1000.0 * diameter / 2000.0)
        ).ToArbitrary();
}
