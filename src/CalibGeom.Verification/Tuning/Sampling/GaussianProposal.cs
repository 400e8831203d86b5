using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning.Sampling;

/// <summary>A normal distribution to draw from, given by its mean and the lower root of its covariance.</summary>
internal sealed class GaussianProposal
{
    private readonly double[] mean;
    private readonly LowerRoot root;

    private GaussianProposal(double[] mean, LowerRoot root) => (this.mean, this.root) = (mean, root);

    internal static GaussianProposal Standard(int dimension)
    {
        var unit = new double[dimension, dimension];
        for (int i = 0; i < dimension; i++)
            unit[i, i] = 1;
        return new(new double[dimension], new LowerRoot(unit));
    }

    /// <summary>The one about a point with a covariance, of which only the lower half is read.</summary>
    internal static GaussianProposal At(double[] mean, double[,] covariance) => new(mean, new LowerRoot(covariance));

    /// <summary>The one with the moments of weighted points, wider by a factor so that no tail is missed.</summary>
    internal static GaussianProposal Of(IReadOnlyList<double[]> points, double[] weights, double widening)
    {
        const double Least = 1e-6; // of the prior's variance of 1: keeps the root defined.
        int n = points[0].Length;
        var mean = new double[n];
        for (int p = 0; p < points.Count; p++)
        for (int i = 0; i < n; i++)
            mean[i] += weights[p] * points[p][i];
        var covariance = new double[n, n];
        for (int p = 0; p < points.Count; p++)
        for (int i = 0; i < n; i++)
        {
            double d = weights[p] * (points[p][i] - mean[i]) * widening * widening;
            for (int j = 0; j <= i; j++)
                covariance[i, j] += d * (points[p][j] - mean[j]);
        }
        for (int i = 0; i < n; i++)
            covariance[i, i] += Least;
        return new(mean, new LowerRoot(covariance));
    }

    internal double[] Draw(Func<double> normal)
    {
        double[] point = root.Times([.. mean.Select(_ => normal())]);
        for (int i = 0; i < point.Length; i++)
            point[i] += mean[i];
        return point;
    }

    /// <summary>The logarithm of the density, without the constant that all share.</summary>
    internal double LogDensity(double[] point)
    {
        var from = new double[point.Length];
        for (int i = 0; i < from.Length; i++)
            from[i] = point[i] - mean[i];
        return -0.5 * root.SquaredLength(from) - root.LogDiagonal;
    }
}
