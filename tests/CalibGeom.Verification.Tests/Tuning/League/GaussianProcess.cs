using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>A Gaussian process with a squared-exponential kernel, as any optimiser has it.</summary>
internal sealed class GaussianProcess(double mean, double amplitude, double noise)
{
    private readonly List<(double X, double Y)> at = [];
    private readonly List<double> values = [];

    internal void Add((double X, double Y) point, double value)
    {
        at.Add(point);
        values.Add(value - mean);
    }

    internal (double Mean, double Deviation) At((double X, double Y) point)
    {
        Matrix<double> covariance = Matrix<double>.Build.Dense(
            at.Count,
            at.Count,
            (i, j) => Kernel(at[i], at[j]) + (i == j ? noise * noise : 0)
        );
        Vector<double> k = Vector<double>.Build.Dense(at.Count, i => Kernel(at[i], point)),
            weights = covariance.Cholesky().Solve(k);
        double variance = amplitude * amplitude - weights * k;
        return (mean + weights * Vector<double>.Build.DenseOfEnumerable(values), Math.Sqrt(Math.Max(0, variance)));
    }

    private double Kernel((double X, double Y) a, (double X, double Y) b) =>
        amplitude * amplitude * Math.Exp(-((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y)) / 2);
}
