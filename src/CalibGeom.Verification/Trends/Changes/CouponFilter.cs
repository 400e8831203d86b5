using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Trends.Changes;

/// <summary>
/// A Kalman filter whose state is the constant of every series (what a caliper, a place and an object add), not known
/// before the first coupon. What a coupon differs by from what was expected of it, divided by the root of its
/// covariance, is then independent and standard normal as long as nothing has moved, however few coupons came before
/// and however their uncertainties differ.
/// </summary>
internal sealed class CouponFilter
{
    // Variance before the first coupon: 10 mm against hundredths that are read, yet far from the limits of a double.
    private const double Unknown = 100;
    private readonly Step[] steps;
    private readonly int series;

    private CouponFilter(IReadOnlyList<TrendPoint> points, Step[] steps, int series)
    {
        Points = points;
        this.steps = steps;
        this.series = series;
        Observed = Whiten((n, i) => points[n].Values[i].Value);
        Squares = new double[points.Count];
        Counts = new int[points.Count];
        for (int n = 0; n < points.Count; n++)
        {
            (Squares[n], Counts[n]) = n > 0 ? (Squares[n - 1], Counts[n - 1]) : (0, 0);
            for (int i = 0; i < Observed[n].Length; i++)
            {
                // The first value of a series says nothing of scatter: its root of the covariance is that of Unknown.
                if (steps[n].Root[i, i] < 1)
                    continue;
                Squares[n] += Observed[n][i] * Observed[n][i];
                Counts[n]++;
            }
        }
    }

    internal IReadOnlyList<TrendPoint> Points { get; }

    /// <summary>Per coupon the independent standard normal numbers that its readings come to.</summary>
    internal double[][] Observed { get; }

    /// <summary>The sum of their squares up to each coupon.</summary>
    internal double[] Squares { get; }

    /// <summary>How many of them say something of scatter, up to each coupon.</summary>
    internal int[] Counts { get; }

    internal static CouponFilter Of(
        IReadOnlyList<TrendPoint> points,
        TrendOptions options,
        CancellationToken cancellation = default
    )
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (GaugeValue value in points.SelectMany(p => p.Values))
            numbers.TryAdd(Key(value), numbers.Count);
        int k = Math.Max(1, numbers.Count);
        Matrix<double> covariance = Start(points, numbers, k);
        var steps = new Step[points.Count];
        for (int n = 0; n < points.Count; n++)
        {
            cancellation.ThrowIfCancellationRequested();
            int[] at = points[n].Values.Select(v => numbers[Key(v)]).ToArray();
            if (at.Length == 0)
            {
                steps[n] = new Step(at, new double[0, 0], new double[k, 0]);
                continue;
            }
            Matrix<double> seen = Matrix<double>.Build.Dense(k, at.Length, (r, c) => covariance[r, at[c]]);
            Matrix<double> spread =
                Matrix<double>.Build.Dense(at.Length, at.Length, (r, c) => covariance[at[r], at[c]])
                + Noise(points[n].Values, options);
            Matrix<double> gain = seen * spread.Inverse();
            steps[n] = new Step(at, spread.Cholesky().Factor.Inverse().ToArray(), gain.ToArray());
            covariance -= gain * seen.Transpose();
            covariance = (covariance + covariance.Transpose()) / 2;
        }
        return new CouponFilter(points, steps, numbers.Count);
    }

    /// <summary>What the filter makes of any number per reading; it is linear in them.</summary>
    internal double[][] Whiten(Func<int, int, double> raw)
    {
        var level = new double[Math.Max(1, series)];
        var whitened = new double[steps.Length][];
        for (int n = 0; n < steps.Length; n++)
        {
            Step step = steps[n];
            var innovation = new double[step.At.Length];
            for (int i = 0; i < innovation.Length; i++)
                innovation[i] = raw(n, i) - level[step.At[i]];
            for (int s = 0; s < level.Length; s++)
            for (int i = 0; i < innovation.Length; i++)
                level[s] += step.Gain[s, i] * innovation[i];
            whitened[n] = step.Apply(innovation);
        }
        return whitened;
    }

    /// <summary>
    /// By how many standard deviations a coupon lies away, along a direction such as "less light", from what those
    /// before it let expect; null when they say nothing.
    /// </summary>
    internal double? Residual(int n, Func<GaugeValue, double> direction)
    {
        double[] raw = Points[n].Values.Select(direction).ToArray(),
            turned = steps[n].Apply(raw);
        double length = turned.Sum(t => t * t);
        return length <= 4 * raw.Sum(r => r * r) / Unknown
            ? null
            : turned.Zip(Observed[n], (t, o) => t * o).Sum() / Math.Sqrt(length);
    }

    // Series of one kin share most of what is not known before; each has little of its own.
    private static Matrix<double> Start(IReadOnlyList<TrendPoint> points, Dictionary<string, int> numbers, int k)
    {
        var kin = new string[k];
        var own = new double[k];
        foreach (GaugeValue value in points.SelectMany(p => p.Values))
        {
            int at = numbers[Key(value)];
            kin[at] = value.Kin.Length > 0 ? $"{value.Gauge}|{value.Kin}" : "";
            own[at] = TrendOptions.BetweenSeries(value);
        }
        return Matrix<double>.Build.Dense(
            k,
            k,
            (r, c) =>
                (r == c || (kin[r] is { Length: > 0 } && kin[r] == kin[c]) ? Unknown : 0)
                + (r == c && kin[r] is { Length: > 0 } ? own[r] * own[r] : 0)
        );
    }

    private static string Key(GaugeValue value) => $"{value.Gauge}|{value.Series}";

    // All growths of one print share what differs between prints; so do all its print-throughs.
    private static Matrix<double> Noise(IReadOnlyList<GaugeValue> values, TrendOptions options) =>
        Matrix<double>.Build.Dense(
            values.Count,
            values.Count,
            (r, c) =>
                (r == c ? values[r].Uncertainty * values[r].Uncertainty : 0)
                + (values[r].Gauge == values[c].Gauge ? Between(values[r].Gauge, options) : 0)
        );

    private static double Between(Gauge gauge, TrendOptions options) =>
        gauge switch
        {
            Gauge.Growth => options.BetweenPrints * options.BetweenPrints,
            Gauge.PrintThrough => options.BetweenThroughs * options.BetweenThroughs,
            _ => 0,
        };

    private sealed record Step(int[] At, double[,] Root, double[,] Gain)
    {
        internal double[] Apply(double[] innovation)
        {
            var result = new double[innovation.Length];
            for (int i = 0; i < innovation.Length; i++)
            for (int j = 0; j <= i; j++)
                result[i] += Root[i, j] * innovation[j];
            return result;
        }
    }
}
