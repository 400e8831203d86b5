using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// The normal distribution function from a table, to 1e-11. A mixture of thousands of normal laws asks for it a million
/// times; MathNet's, of which the table is made, takes some ten times as long.
/// </summary>
internal static class NormalTable
{
    private const double Reach = 8.5;
    private const int PerUnit = 128,
        Cells = (int)(2 * Reach * PerUnit);

    private static readonly double[] Values = At(z => Normal.CDF(0, 1, z)),
        Slopes = At(z => Normal.PDF(0, 1, z) / PerUnit);

    /// <summary>The probability of less than a value.</summary>
    /// <param name="mean">Any number.</param>
    /// <param name="deviation">Above 0.</param>
    /// <param name="value">Any number, maybe infinite.</param>
    internal static double Below(double mean, double deviation, double value)
    {
        double at = ((value - mean) / deviation + Reach) * PerUnit;
        if (at <= 0)
            return 0;
        if (at >= Cells)
            return 1;
        int cell = (int)at;
        double t = at - cell,
            u = 1 - t;
        // Hermite's cubic through two neighbouring points of the table.
        return u * u * ((1 + 2 * t) * Values[cell] + t * Slopes[cell])
            + t * t * ((1 + 2 * u) * Values[cell + 1] - u * Slopes[cell + 1]);
    }

    private static double[] At(Func<double, double> law) =>
        [.. Enumerable.Range(0, Cells + 1).Select(i => law(i / (double)PerUnit - Reach))];
}
