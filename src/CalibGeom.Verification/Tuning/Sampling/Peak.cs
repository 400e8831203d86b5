using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning.Sampling;

/// <summary>
/// Where a smooth answer is highest and how wide it is there (Laplace): Newton steps with numerical derivatives,
/// damped until they rise. Precise logs leave so little of the prior that draws of it alone would not find it.
/// </summary>
internal static class Peak
{
    private const int MostSteps = 25;
    private const double Difference = 1e-3,
        LongestStep = 1.5,
        Arrived = 0.02,
        Wider = 1.3;

    /// <param name="dimension">How many parameters there are, standard normal before the data.</param>
    /// <param name="searched">How many of them, from the first on, the search moves; the others stay as before.</param>
    /// <param name="logLikelihood">The logarithm of the likelihood, smooth in those.</param>
    internal static GaussianProposal Of(int dimension, int searched, Func<double[], double> logLikelihood)
    {
        double Height(double[] z) => logLikelihood(z) - 0.5 * z.Sum(x => x * x);
        var at = new double[dimension];
        double height = Height(at),
            damping = 0;
        (double[] slope, double[,] bend) = Derivatives(at, searched, Height, height);
        for (int step = 0; step < MostSteps; step++)
        {
            double[] move = Root(bend, damping, out damping).Solve(slope);
            double length = Math.Sqrt(move.Sum(x => x * x)),
                shorten = Math.Min(1, LongestStep / length);
            double[] to = [.. at];
            for (int i = 0; i < searched; i++)
                to[i] += shorten * move[i];
            double higher = Height(to);
            if (!(higher > height))
            {
                damping = Math.Max(1, 8 * damping);
                if (length < Arrived)
                    break;
                continue;
            }
            (at, height, damping) = (to, higher, damping / 8);
            (slope, bend) = Derivatives(at, searched, Height, height);
            if (length < Arrived)
                break;
        }
        return GaussianProposal.At(at, Spread(dimension, Root(bend, 0, out _), searched));
    }

    // Minus the second derivatives with so much damping that they have a root.
    private static LowerRoot Root(double[,] bend, double damping, out double used)
    {
        int n = bend.GetLength(0);
        for (used = damping; ; used = Math.Max(1, 4 * used))
        {
            var damped = (double[,])bend.Clone();
            for (int i = 0; i < n; i++)
                damped[i, i] += used;
            var root = new LowerRoot(damped);
            if (root.IsProper)
                return root;
            if (!double.IsFinite(used))
                throw new ArithmeticException("The likelihood is no number at the settings of the log.");
        }
    }

    private static (double[] Slope, double[,] Bend) Derivatives(
        double[] at,
        int n,
        Func<double[], double> height,
        double here
    )
    {
        double Moved(int i, int j, double di, double dj)
        {
            double[] to = [.. at];
            to[i] += di;
            to[j] += dj;
            return height(to);
        }
        const double d = Difference;
        var slope = new double[n];
        var bend = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            double up = Moved(i, i, d, 0),
                down = Moved(i, i, -d, 0);
            slope[i] = (up - down) / (2 * d);
            bend[i, i] = -(up - 2 * here + down) / (d * d);
            for (int j = 0; j < i; j++)
                bend[i, j] =
                    -(Moved(i, j, d, d) - Moved(i, j, d, -d) - Moved(i, j, -d, d) + Moved(i, j, -d, -d)) / (4 * d * d);
        }
        return (slope, bend);
    }

    private static double[,] Spread(int dimension, LowerRoot bend, int searched)
    {
        var covariance = new double[dimension, dimension];
        for (int i = 0; i < dimension; i++)
        {
            if (i >= searched)
            {
                covariance[i, i] = 1;
                continue;
            }
            var unit = new double[searched];
            unit[i] = 1;
            double[] column = bend.Solve(unit);
            for (int j = 0; j <= i; j++)
                covariance[i, j] = Wider * Wider * column[j];
        }
        return covariance;
    }
}
