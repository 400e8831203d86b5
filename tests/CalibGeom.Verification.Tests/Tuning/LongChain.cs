using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>
/// The same belief drawn another way: a long random walk (Metropolis) over ln b, ln c, ln tau and the deviation between
/// prints, all that is normal integrated out. Measured growths only.
/// </summary>
internal sealed class LongChain
{
    private const int Parameters = 4,
        Learning = 4000,
        Steps = 12000;
    private readonly ExposurePriors priors;
    private readonly Trial[] trials;
    private readonly ExposureSettings at;

    internal LongChain(Trial[] trials, ExposurePriors priors, ExposureSettings at)
    {
        (this.trials, this.priors, this.at) = (trials, priors, at);
        var random = new SeededRandom(5);
        double[] z = new double[Parameters];
        (double log, double mean, double variance) here = Judge(z);
        Matrix<double> step = Matrix<double>.Build.DenseIdentity(Parameters) * 0.3;
        var walked = new List<double[]>();
        var means = new List<double>();
        double variances = 0;
        int moved = 0;
        double size = 1;
        for (int i = 0; i < Learning + Steps; i++)
        {
            if (i > 0 && i <= Learning && i % 500 == 0)
            {
                size *=
                    moved < 75 ? 0.6
                    : moved > 200 ? 1.4
                    : 1;
                (step, moved) = (Spread(walked), 0);
            }
            Vector<double> by = step * Vector<double>.Build.Dense(Parameters, _ => size * random.Normal());
            double[] to = [.. z.Select((x, k) => x + by[k])];
            (double log, double mean, double variance) there = Judge(to);
            if (Math.Log(random.Uniform()) < there.log - here.log)
                (z, here, moved) = (to, there, moved + 1);
            walked.Add(z);
            if (i < Learning)
                continue;
            means.Add(here.mean);
            variances += here.variance / Steps;
        }
        Mean = means.Average();
        Deviation = Math.Sqrt(variances + means.Average(m => (m - Mean) * (m - Mean)));
        double[][] kept = [.. walked.Skip(Learning)];
        TimeEffect = priors.TimeEffect.At(kept.Select(k => k[0]).Order().ElementAt(Steps / 2));
    }

    /// <summary>Growth at the settings asked for, mm.</summary>
    internal double Mean { get; }

    internal double Deviation { get; }

    /// <summary>b, median, mm.</summary>
    internal double TimeEffect { get; }

    private (double Log, double Mean, double Variance) Judge(double[] z)
    {
        double b = priors.TimeEffect.At(z[0]),
            c = priors.RestEffect.At(z[1]),
            tau = priors.RestTime.At(z[2]),
            between = priors.BetweenPrints.At(z[3]),
            first = trials[0].Settings.Time,
            a = priors.GrowthDeviation * priors.GrowthDeviation,
            misfit = priors.LackOfFit * priors.LackOfFit,
            axes = priors.AxisDifference * priors.AxisDifference / 4;
        double Formula(ExposureSettings s) =>
            priors.GrowthMean + b * Math.Log(s.Time / first) - c * (1 - Math.Exp(-s.Rest / tau));
        // X of every print, then Y.
        int n = trials.Length;
        GrowthReading Read(int i) => (i < n ? trials[i].GrowthX : trials[i - n].GrowthY)!;
        ExposureSettings Set(int i) => trials[i % n].Settings;
        Cholesky<double> root = Matrix<double>
            .Build.Dense(
                2 * n,
                2 * n,
                (i, j) =>
                    a
                    + (Set(i).SameProcess(Set(j)) ? misfit : 0)
                    + (i % n == j % n ? between * between : 0)
                    + ((i < n) == (j < n) ? axes : -axes)
                    + (i == j ? Read(i).Uncertainty * Read(i).Uncertainty : 0)
            )
            .Cholesky();
        Vector<double> left = Vector<double>.Build.Dense(2 * n, i => Read(i).Value - Formula(Set(i))),
            shared = Vector<double>.Build.Dense(2 * n, i => a + (Set(i).SameProcess(at) ? misfit : 0)),
            weights = root.Solve(left);
        return (
            -0.5 * (left * weights + root.DeterminantLn + z.Sum(x => x * x)),
            Formula(at) + shared * weights,
            a + misfit - shared * root.Solve(shared)
        );
    }

    private static Matrix<double> Spread(List<double[]> walked)
    {
        double[][] late = [.. walked.Skip(walked.Count / 2)];
        double[] middle = [.. Enumerable.Range(0, Parameters).Select(k => late.Average(z => z[k]))];
        return Matrix<double>
            .Build.Dense(
                Parameters,
                Parameters,
                (i, j) => 1.4 * late.Average(z => (z[i] - middle[i]) * (z[j] - middle[j])) + (i == j ? 1e-8 : 0)
            )
            .Cholesky()
            .Factor;
    }
}
