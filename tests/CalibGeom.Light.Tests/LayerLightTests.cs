using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

public class LayerLightTests
{
    [Fact]
    public void ATallStackAddsUpAGeometricSeries() =>
        // CHECKS.md 4.3, COMPUTED.
        Assert.Equal(3.52772647316, new LayerLight(new WorkingCurve(0.15, 8), 4, 2.5, 0.05).Accumulation(), 1e-9);

    [Property(MaxTest = 60)]
    public Property SeriesAndLoopAgree() =>
        Prop.ForAll(
            Gen.Choose(1, 60).ToArbitrary(),
            Gen.Choose(20, 100).ToArbitrary(),
            (layers, height) =>
            {
                var light = new LayerLight(new WorkingCurve(0.12, 8), 4, 2.5, height / 1000.0);
                double sum = 0,
                    below = 0.03;
                for (int later = 0; later < layers; later++)
                    sum += light.Dose * Math.Exp(-((later + 1) * light.Layer + below) / 0.12);
                double through = light.Dose * light.Transmission * light.Accumulation(layers) * Math.Exp(-below / 0.12);
                return Math.Abs(sum / through - 1) < 1e-12
                    && Math.Abs(light.Curve.Depth(sum) + below - light.PrintThrough(layers)) < 1e-12;
            }
        );

    [Fact]
    public void PrintThroughAnswersToExposureByDp()
    {
        var curve = new WorkingCurve(0.12, 8);
        double change =
            new LayerLight(curve, 4, 5, 0.05).PrintThrough() - new LayerLight(curve, 4, 2.5, 0.05).PrintThrough();
        Assert.Equal(0.12 * Math.Log(2), change, 1e-12);
    }

    [Fact]
    public void BaseLayersGetTheirOwnTime()
    {
        var light = new LayerLight(new WorkingCurve(0.12, 8), 4, 2.5, 0.05, 5, 25);
        Assert.Equal(100, light.DoseOf(4));
        Assert.Equal(10, light.DoseOf(5));
        Assert.Throws<ArgumentException>(() => new LayerLight(light.Curve, 4, 2.5, 0.05, -1));
        Assert.Throws<ArgumentException>(() => new LayerLight(light.Curve, 4, 2.5, 0.05, 5, double.NaN));
    }

    [Theory]
    [InlineData(0, 2.5, 0.05)]
    [InlineData(4, -1, 0.05)]
    [InlineData(4, 2.5, double.NaN)]
    [InlineData(4, 2.5, 2)]
    public void ValuesOutOfRangeAreRefused(double irradiance, double time, double layer) =>
        Assert.Throws<ArgumentException>(() => new LayerLight(new WorkingCurve(0.12, 8), irradiance, time, layer));

    [Fact]
    public void AStackHasALayer() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new LayerLight(new WorkingCurve(0.12, 8), 4, 2.5, 0.05).Accumulation(0)
        );
}
