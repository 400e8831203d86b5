using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class EdgeBlurTests
{
    // CHECKS.md 4.3, COMPUTED: threshold of a half-plane blurred by a Gaussian, x/sigma = -quantile(Ec/E0).
    [Theory]
    [InlineData(1.25, -0.841621233573)]
    [InlineData(1.5, -0.430727299295)]
    [InlineData(2, 0)]
    [InlineData(2.5, 0.253347103136)]
    [InlineData(3, 0.430727299295)]
    [InlineData(4, 0.674489750196)]
    [InlineData(5, 0.841621233573)]
    [InlineData(6, 0.967421566102)]
    [InlineData(8, 1.15034938038)]
    [InlineData(10, 1.28155156554)]
    [InlineData(20, 1.64485362695)]
    public void AGaussianEdgeGrowsAsPublished(double ratio, double growth) =>
        Assert.Equal(growth, new GaussianBlur(0.02).EdgeDistance(1 / ratio) / 0.02, 1e-9);

    [Fact]
    public void DepthRaisesTheThreshold()
    {
        // CHECKS.md 4.3, COMPUTED: E0/Ec = 4, z = 0.05 mm, Dp = 0.15 mm.
        double share = Math.Exp(0.05 / 0.15) / 4;
        Assert.Equal(0.388283545739, new GaussianBlur(1).EdgeDistance(share), 1e-9);
    }

    [Fact]
    public void ALorentzEdgeAtFourTimesTheThresholdGrowsByItsWidth() =>
        // CHECKS.md 4.5, COMPUTED: E0/Ec = 4 gives x/gamma = 1.
        Assert.Equal(0.02, new LorentzBlur(0.02).EdgeDistance(0.25), 1e-12);

    [Property(MaxTest = 100)]
    public Property DistanceUndoesShare() =>
        Prop.ForAll(
            Blurs(),
            Shares(),
            (blur, share) => Math.Abs(blur.EdgeShare(blur.EdgeDistance(share)) - share) < 1e-12
        );

    [Property(MaxTest = 100)]
    public Property AnEdgeIsTheSumOfItsLines() =>
        Prop.ForAll(
            Blurs(),
            Shares(),
            (blur, share) =>
            {
                double x = blur.EdgeDistance(share),
                    step = blur.Width * 1e-4;
                double slope = (blur.EdgeShare(x - step) - blur.EdgeShare(x + step)) / (2 * step);
                return Math.Abs(slope - blur.LineDensity(x)) < 1e-5 / blur.Width;
            }
        );

    [Property(MaxTest = 50)]
    public Property AWideDiscHasTheEdgeOfAHalfPlane() =>
        Prop.ForAll(
            Shares(),
            share =>
            {
                var blur = new GaussianBlur(0.02);
                double x = blur.EdgeDistance(share);
                return Math.Abs(new DiscMask(blur, 40).Share(20 + x) - share) < 2e-3;
            }
        );

    [Theory]
    [InlineData(0)]
    [InlineData(-0.01)]
    [InlineData(1.5)]
    [InlineData(double.NaN)]
    public void AWidthOutOfRangeIsRefused(double width)
    {
        Assert.Contains(
            "blur",
            Assert.Throws<ArgumentException>(() => new GaussianBlur(width)).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => new LorentzBlur(width));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void AShareMustLieBetweenNothingAndAll(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new GaussianBlur(0.02).EdgeDistance(share));

    private static Arbitrary<EdgeBlur> Blurs() =>
        (
            from width in Gen.Choose(1, 100)
            from heavy in Gen.Elements(true, false)
            select heavy ? (EdgeBlur)new LorentzBlur(width / 1000.0) : new GaussianBlur(width / 1000.0)
        ).ToArbitrary();

    private static Arbitrary<double> Shares() => Gen.Choose(1, 999).Select(n => n / 1000.0).ToArbitrary();
}
