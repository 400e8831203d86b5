using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Uncertainty;

public class SeededRandomTests
{
    [Fact]
    public void StudentAndChiSquaredHaveTheirMoments()
    {
        var random = new SeededRandom(7);
        double[] t = Enumerable.Range(0, 100_000).Select(_ => random.Student(10)).ToArray();
        double[] chi = Enumerable.Range(0, 100_000).Select(_ => random.ChiSquared(1)).ToArray();
        Near.Relative(Math.Sqrt(10.0 / 8), SampleStatistics.Of(t).StandardDeviation, 0.01);
        Near.Relative(1, SampleStatistics.Of(chi).Mean, 0.02);
        Near.Relative(Math.Sqrt(2), SampleStatistics.Of(chi).StandardDeviation, 0.03);
    }
}
