using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Trends.Charts;

/// <summary>
/// Average run lengths: after how many points a chart of independent standard normal values signals. Those of sums and
/// averages solve an integral equation by Nystroem's method on Gauss-Legendre nodes (Crowder, Technometrics 29 (1987)
/// 401 for the EWMA; Page 1954 for the sums).
/// </summary>
public static class RunLength
{
    private const int Nodes = 64;
    private const double Widest = 60;

    /// <summary>Of single values against limits.</summary>
    /// <param name="reach">Half the width of the limits in standard deviations, above 0.</param>
    /// <param name="shift">By how many standard deviations the mean has moved. Default 0.</param>
    public static double Individuals(double reach, double shift = 0)
    {
        Require.Positive(reach, Widest, "width of the limits", "", nameof(reach));
        return 1 / (Normal.CDF(0, 1, -reach - shift) + Normal.CDF(0, 1, -reach + shift));
    }

    /// <summary>Of an EWMA that starts at its target, against the limits of a long series.</summary>
    /// <param name="weight">lambda, above 0 and at most 1.</param>
    /// <param name="reach">Half the width of the limits in standard deviations of the average, above 0.</param>
    /// <param name="shift">By how many standard deviations the mean has moved. Default 0.</param>
    public static double Ewma(double weight, double reach, double shift = 0)
    {
        Require.Positive(weight, 1, "weight of the newest value", "", nameof(weight));
        Require.Positive(reach, Widest, "width of the limits", "", nameof(reach));
        double limit = reach * Math.Sqrt(weight / (2 - weight));
        double Density(double from, double to) =>
            Normal.PDF(0, 1, (to - (1 - weight) * from) / weight - shift) / weight;
        (double[] at, double[] share) = Rule(-limit, limit);
        Vector<double> lengths = Lengths(at, share, Density);
        return 1 + share.Select((w, i) => w * lengths[i] * Density(0, at[i])).Sum();
    }

    /// <summary>Of a pair of cumulative sums that start at 0.</summary>
    /// <param name="allowance">k in standard deviations, at least 0.</param>
    /// <param name="limit">h in standard deviations, above 0.</param>
    /// <param name="shift">By how many standard deviations the mean has moved. Default 0.</param>
    public static double Cusum(double allowance, double limit, double shift = 0) =>
        1 / (1 / CusumOneSided(allowance, limit, shift) + 1 / CusumOneSided(allowance, limit, -shift));

    /// <summary>Of one cumulative sum that starts at 0 and adds up what lies above the target.</summary>
    /// <param name="allowance">k in standard deviations, at least 0.</param>
    /// <param name="limit">h in standard deviations, above 0.</param>
    /// <param name="shift">By how many standard deviations the mean has moved upward. Default 0.</param>
    public static double CusumOneSided(double allowance, double limit, double shift = 0)
    {
        Require.Within(allowance, 0, Widest, "allowance", "", nameof(allowance));
        Require.Positive(limit, Widest, "limit", "", nameof(limit));
        double Density(double from, double to) => Normal.PDF(0, 1, to - from + allowance - shift);
        double Back(double from) => Normal.CDF(0, 1, allowance - from - shift);
        (double[] at, double[] share) = Rule(0, limit);
        // The sum may fall back to exactly 0, which is one more node without a weight of its own.
        int n = at.Length;
        var system = Matrix<double>.Build.DenseIdentity(n + 1);
        for (int i = 0; i <= n; i++)
        {
            double from = i < n ? at[i] : 0;
            for (int j = 0; j < n; j++)
                system[i, j] -= share[j] * Density(from, at[j]);
            system[i, n] -= Back(from);
        }
        return system.Solve(Vector<double>.Build.Dense(n + 1, 1))[n];
    }

    /// <summary>The limit that gives a run length without shift, found by halving.</summary>
    /// <param name="length">The run length, 2 to 1e6.</param>
    /// <param name="ofLimit">The run length of a limit; it must rise with it.</param>
    /// <exception cref="ArgumentException">The length is out of range.</exception>
    public static double LimitFor(double length, Func<double, double> ofLimit)
    {
        ArgumentNullException.ThrowIfNull(ofLimit);
        Require.Within(length, 2, 1e6, "run length", "", nameof(length));
        double low = 0.05,
            high = 12;
        for (int i = 0; i < 50; i++)
        {
            double middle = (low + high) / 2;
            double there = ofLimit(middle);
            if (there < length)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    private static Vector<double> Lengths(double[] at, double[] share, Func<double, double, double> density)
    {
        var system = Matrix<double>.Build.Dense(
            at.Length,
            at.Length,
            (i, j) => (i == j ? 1 : 0) - share[j] * density(at[i], at[j])
        );
        return system.Solve(Vector<double>.Build.Dense(at.Length, 1));
    }

    private static (double[] At, double[] Share) Rule(double low, double high)
    {
        var rule = new GaussLegendreRule(low, high, Nodes);
        return (rule.Abscissas, rule.Weights);
    }
}
