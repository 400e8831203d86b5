namespace CalibGeom.Verification.Tuning;

/// <summary>
/// Measured growths beside the formula without a: a is normal given the rest, so that its mean and spread are known at
/// once and nothing is searched for, however precise the readings are.
/// </summary>
internal sealed class MeasuredGrowths
{
    private readonly double[] left;
    private readonly double mean,
        spread;

    /// <param name="around">The covariance of the readings around the formula.</param>
    /// <param name="left">What the formula without a leaves of each reading, mm.</param>
    /// <param name="prior">The mean of a before, mm.</param>
    /// <param name="deviation">Its standard deviation before, mm.</param>
    internal MeasuredGrowths(GrowthSpread around, double[] left, double prior, double deviation)
    {
        this.left = left;
        Around = around;
        double[] share = around.Solve([.. left.Select(_ => 1.0)]);
        double precision = 1 / (deviation * deviation),
            sum = prior * precision,
            before = prior / deviation;
        for (int j = 0; j < left.Length; j++)
        {
            precision += share[j];
            sum += share[j] * left[j];
        }
        spread = 1 / Math.Sqrt(precision);
        mean = sum / precision;
        double after = mean / spread;
        LogLikelihood =
            left.Length == 0
                ? 0
                : -0.5 * (around.SquaredLength(left) + before * before - after * after)
                    - around.LogDiagonal
                    + Math.Log(spread / deviation);
    }

    internal GrowthSpread Around { get; }

    /// <summary>The logarithm of the likelihood of the readings, a integrated out.</summary>
    internal double LogLikelihood { get; }

    /// <summary>a, so many standard deviations from its mean given the readings.</summary>
    internal double Growth(double z) => mean + spread * z;

    /// <summary>What the formula with some a leaves of each reading, mm.</summary>
    internal double[] LeftBy(double a) => [.. left.Select(l => l - a)];
}
