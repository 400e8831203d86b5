using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests.Logs;

public class LayerCycleTests
{
    [Theory]
    [InlineData(10, 0.05, 200)]
    [InlineData(10.02, 0.05, 200)]
    [InlineData(10.03, 0.05, 201)]
    [InlineData(10.0001, 0.05, 200)] // 0.002 of a layer, as the grid of solids may leave it
    [InlineData(0.03, 0.05, 1)]
    [InlineData(0.02, 0.05, 1)]
    [InlineData(15.43, 0.05, 309)]
    [InlineData(0.3, 0.1, 3)] // 0.3 / 0.1 is below 3 in floating point, 0.7 / 0.1 as well
    [InlineData(0.7, 0.1, 7)]
    public void LayersAreCounted(double height, double layer, int layers)
    {
        Assert.Equal(layers, LayerCycle.Layers(height, layer));
        // 2 s of light, 1 s of rest and 7 s of lift each; five base layers take 25 s instead of 2.
        Assert.Equal(
            10.0 * layers + 23 * Math.Min(5, layers),
            new LayerCycle().PrintTime(new ExposureSettings(2, 1), layer, height),
            1e-9
        );
    }

    [Theory]
    [InlineData(10, 0)]
    [InlineData(10, -0.05)]
    [InlineData(-1, 0.05)]
    [InlineData(double.NaN, 0.05)]
    [InlineData(1e6, 0.05)]
    public void WhatIsNoHeightIsRefused(double height, double layer) =>
        Assert.Throws<ArgumentException>(() => LayerCycle.Layers(height, layer));
}
