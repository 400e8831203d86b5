using CalibGeom.Plates;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Plates;

public class ExposureLadderTests
{
    [Property(MaxTest = 200)]
    public Property TimesRiseFromOneEndToTheOtherByNearlyEqualRatios() =>
        Prop.ForAll(
            (
                from low in Gen.Choose(100, 2000)
                from more in Gen.Choose(110, 400)
                from count in Gen.Choose(2, 8)
                select (From: low / 100.0, To: Math.Round(low * more / 1e4, 2), Count: count)
            ).ToArbitrary(),
            ladder =>
            {
                IReadOnlyList<double> times = ExposureLadder.Times(ladder.From, ladder.To, ladder.Count);
                Assert.Equal((ladder.Count, ladder.From, ladder.To), (times.Count, times[0], times[^1]));
                double step = Math.Pow(ladder.To / ladder.From, 1.0 / (ladder.Count - 1));
                for (int i = 1; i < times.Count; i++)
                {
                    // Each of two times is rounded by at most half a hundredth of a second.
                    double slack = 0.0051 * (1 + step);
                    Assert.InRange(times[i] - times[i - 1] * step, -slack, slack);
                }
            }
        );

    [Theory]
    [InlineData(2.6, 1.8, 3)]
    [InlineData(2, 2, 2)]
    [InlineData(2, 2.02, 5)]
    [InlineData(0.01, 2, 3)]
    [InlineData(1, 201, 3)]
    [InlineData(1, 2, 1)]
    [InlineData(1, 2, 51)]
    [InlineData(double.NaN, 2, 3)]
    public void WhatIsNoLadderIsRefused(double from, double to, int count) =>
        Assert.ThrowsAny<ArgumentException>(() => ExposureLadder.Times(from, to, count));

    [Theory]
    [InlineData(2, 2, "From 2 to 2 s does not rise; the shortest exposure comes first.")]
    [InlineData(1, 201, "The longest exposure must be 0.05 to 200 s, not 201.")]
    [InlineData(0.01, 2, "The shortest exposure must be 0.05 to 200 s, not 0.01.")]
    public void ARefusalSaysWhichEndAndItsLimit(double from, double to, string said) =>
        Assert.StartsWith(
            said,
            Assert.ThrowsAny<ArgumentException>(() => ExposureLadder.Times(from, to, 3)).Message,
            StringComparison.Ordinal
        );
}
