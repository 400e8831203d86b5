namespace CalibGeom.Features.Tests;

public class RequireTests
{
    [Fact]
    public void LimitsAreIncluded()
    {
        Assert.Equal(0, Require.Within(0, 0, 1, "a", "", "p"));
        Assert.Equal(1, Require.Within(1, 0, 1, "a", "", "p"));
        Assert.Equal(1, Require.Positive(1, 1, "a", "", "p"));
        Assert.Equal(double.Epsilon, Require.Positive(double.Epsilon, 1, "a", "", "p"));
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(1.001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void WhatLiesOutsideIsRefusedWithLimitUnitAndValue(double value)
    {
        var within = Assert.Throws<ArgumentException>(() => Require.Within(value, 0, 1, "rest", "s", "p"));
        Assert.StartsWith(FormattableString.Invariant($"The rest must be 0 to 1 s, not {value}."), within.Message);
        Assert.Equal("p", within.ParamName);
        var positive = Assert.Throws<ArgumentException>(() => Require.Positive(value, 1, "rest", "", "p"));
        Assert.StartsWith(
            FormattableString.Invariant($"The rest must be above 0 and at most 1, not {value}."),
            positive.Message
        );
    }

    [Fact]
    public void NothingIsNotPositive() =>
        Assert.Throws<ArgumentException>(() => Require.Positive(0, 1, "rest", "s", "p"));
}
