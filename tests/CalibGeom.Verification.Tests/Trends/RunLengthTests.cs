using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Trends.Charts;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>
/// Average run lengths, computed elsewhere by quadrature with 200 nodes; they equal the tables of Montgomery (9.3,
/// 9.11, after Hawkins and after Lucas and Saccucci 1990) as far as memory goes.
/// </summary>
public class RunLengthTests
{
    [Theory]
    [InlineData(4, new[] { 167.6838, 74.2240, 26.6302, 13.2851, 8.3831, 4.7472, 3.3428, 2.6195, 2.1945, 1.7085 })]
    [InlineData(5, new[] { 465.4435, 139.4937, 37.9961, 17.0483, 10.3760, 5.7472, 4.0089, 3.1137, 2.5733, 2.0126 })]
    public void Sums(double limit, double[] expected)
    {
        double[] shifts = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 4];
        foreach ((double shift, double length) in shifts.Zip(expected))
            Near.Relative(length, RunLength.Cusum(0.5, limit, shift), 1e-4);
    }

    [Theory]
    [InlineData(0.40, 3.054, new[] { 499.951, 223.728, 71.201, 28.418, 14.263, 5.875, 3.522, 2.019 })]
    [InlineData(0.25, 2.998, new[] { 499.836, 170.296, 48.294, 20.115, 11.136, 5.464, 3.614, 2.258 })]
    [InlineData(0.20, 2.962, new[] { 499.735, 150.216, 41.764, 18.150, 10.542, 5.501, 3.743, 2.381 })]
    [InlineData(0.10, 2.814, new[] { 499.580, 106.322, 31.297, 15.848, 10.331, 6.084, 4.362, 2.868 })]
    [InlineData(0.05, 2.615, new[] { 499.933, 84.006, 28.764, 16.374, 11.383, 7.112, 5.225, 3.496 })]
    [InlineData(0.30, 3.000, new[] { 465.553, 178.741, 53.160, 21.826, 11.699, 5.447, 3.506, 2.145 })]
    [InlineData(0.20, 2.860, new[] { 371.103, 121.216, 36.203, 16.454, 9.802, 5.231, 3.593, 2.309 })]
    public void Averages(double weight, double reach, double[] expected)
    {
        double[] shifts = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3];
        foreach ((double shift, double length) in shifts.Zip(expected))
            // The table is rounded to three decimals.
            Near.Absolute(length, RunLength.Ewma(weight, reach, shift), 5e-4 + 1e-5 * length);
    }

    [Theory]
    [InlineData(0, 370.398347)]
    [InlineData(0.5, 155.224201)]
    [InlineData(1, 43.894682)]
    [InlineData(1.5, 14.967685)]
    [InlineData(2, 6.302963)]
    [InlineData(3, 2.000000)]
    public void Individuals(double shift, double expected) =>
        Near.Relative(expected, RunLength.Individuals(3, shift), 1e-6);

    [Fact]
    public void AnAverageOfWeightOneIsTheValueItself() =>
        Near.Relative(RunLength.Individuals(2.5, 0.7), RunLength.Ewma(1, 2.5, 0.7), 1e-6);

    [Theory]
    [InlineData(50)]
    [InlineData(500)]
    public void LimitsGiveTheRunLengthAskedFor(double length)
    {
        double h = RunLength.LimitFor(length, l => RunLength.Cusum(0.5, l));
        Near.Relative(length, RunLength.Cusum(0.5, h), 1e-6);
        double reach = RunLength.LimitFor(length, l => RunLength.Ewma(0.2, l));
        Near.Relative(length, RunLength.Ewma(0.2, reach), 1e-6);
    }

    [Fact]
    public void ChartsRunAsLongAsComputed()
    {
        // 4,000 runs with seed 7: the standard error of a mean run length is about 1.6 %.
        var random = new SeededRandom(7);
        double sums = Mean(random, 0.5, x => new CusumChart(x).FirstSignal),
            averages = Mean(random, 0.5, x => new EwmaChart(x).FirstSignal);
        Near.Relative(37.9961, sums, 0.05);
        Near.Relative(41.764, averages, 0.05);
    }

    private static double Mean(SeededRandom random, double shift, Func<double[], int?> signal) =>
        Enumerable
            .Range(0, 4000)
            .Average(_ =>
                signal(Enumerable.Range(0, 600).Select(_ => shift + random.Normal()).ToArray()) is { } at ? at + 1 : 600
            );
}
