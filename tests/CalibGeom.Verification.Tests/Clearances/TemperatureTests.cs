using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Clearances;

public class TemperatureTests
{
    private const double Steel = 11.5e-6;

    private static AxisEstimate At(double temperature, double? expansion) =>
        ClearancePrediction
            .Of(
                StandardObject.Table,
                new ReadingSet(
                    StandardObject.Exact(0, 0.01, 0, 0.01).Readings,
                    temperature: temperature,
                    state: PartState.PostCured,
                    material: Material.Rigid,
                    expansion: expansion
                )
            )
            .Axes[0];

    [Theory]
    [InlineData(30, 80e-6)]
    [InlineData(10, 60e-6)]
    [InlineData(35, 120e-6)]
    public void AnExpansionCoefficientIsKnownToTenPercent(double temperature, double expansion)
    {
        // An error of the coefficient stretches all sizes alike, so all of it goes into scale: 0.1 a (t - 20).
        double at = At(temperature, expansion).Scale.StandardUncertainty,
            at20 = At(20, expansion).Scale.StandardUncertainty;
        double expected = 0.1 * expansion * Math.Abs(temperature - 20);
        Assert.Equal(1, Math.Sqrt(at * at - at20 * at20) / expected, 1e-6);
        Assert.Equal(
            At(20, expansion).Growth.StandardUncertainty,
            At(temperature, expansion).Growth.StandardUncertainty,
            1e-9
        );
    }

    [Fact]
    public void WithoutACoefficientAllOfATypicalOneIsUnknown()
    {
        // 80e-6 is the middle of 50e-6 to 120e-6 (cured resins, no source); nothing is corrected, all of it is carried.
        double at = At(30, null).Scale.StandardUncertainty,
            at20 = At(20, null).Scale.StandardUncertainty;
        Assert.Equal(1, Math.Sqrt(at * at - at20 * at20) / ((80e-6 - Steel) * 10), 1e-6);
        Assert.Equal(At(20, null).Scale.Value, At(30, null).Scale.Value, 1e-9);
    }

    [Fact]
    public void ATemperatureIsKnownToOneKelvin()
    {
        // A rectangular error of +-1 K has 1 / sqrt(3) K of standard uncertainty (JCGM 100, 4.3.7); instrument and part
        // expand together by the difference of their coefficients.
        const double Expansion = 80e-6;
        double with = At(20, Expansion).Scale.StandardUncertainty,
            without = At(20, Steel).Scale.StandardUncertainty;
        Assert.Equal(1, Math.Sqrt(with * with - without * without) / ((Expansion - Steel) / Math.Sqrt(3)), 1e-6);
    }

    [Fact]
    public void SizesAreBroughtToTwentyDegrees()
    {
        // 10 K above 20 degrees a part of 80e-6 is (80 - 11.5) 1e-6 x 10 too large for a steel caliper (ISO 1).
        double shift = At(20, 80e-6).Scale.Value - At(30, 80e-6).Scale.Value;
        Assert.Equal((80e-6 - Steel) * 10, shift, 1e-7);
    }
}
