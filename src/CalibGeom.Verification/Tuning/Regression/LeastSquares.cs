using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>
/// Nonlinear least squares by Levenberg and Marquardt, damped in units of the greatest curvature each parameter has
/// shown (J. J. More,
/// Lecture Notes in Mathematics 630 (1978) 105), with derivatives by central differences. A prior is one more residual:
/// (parameter - mean) / deviation.
/// </summary>
internal static class LeastSquares
{
    private const int MostSteps = 500;
    private static readonly double Difference = Math.Cbrt(2.2e-16);

    /// <summary>
    /// Minimises a sum of squared residuals from a start; a start that is known to be near may be damped less.
    /// </summary>
    internal static LeastSquaresFit Minimise(Func<double[], double[]> residuals, double[] start, double damping = 100)
    {
        var at = (double[])start.Clone();
        double[] r = residuals(at);
        double sum = Square(r);
        var scale = new double[at.Length];
        Matrix<double> jacobian = Jacobian(residuals, at, r.Length);
        bool converged = false;
        for (int step = 0; step < MostSteps && !converged; step++)
        {
            Matrix<double> curvature = jacobian.TransposeThisAndMultiply(jacobian);
            Vector<double> slope = jacobian.TransposeThisAndMultiply(Vector<double>.Build.Dense(r));
            for (int k = 0; k < at.Length; k++)
                scale[k] = Math.Max(scale[k], curvature[k, k]);
            bool better = false;
            while (!better && damping < 1e16)
            {
                double[] there = Move(at, curvature, slope, damping, scale);
                double[] rThere = residuals(there);
                double sumThere = Square(rThere);
                if (sumThere <= sum)
                {
                    converged = Still(at, there);
                    (at, r, sum, better) = (there, rThere, sumThere, true);
                    damping = Math.Max(damping / 5, 1e-14);
                }
                else
                {
                    if (Still(at, there))
                    {
                        converged = true;
                        break;
                    }
                    damping *= 7;
                }
            }
            if (!better)
            {
                converged = true;
                break;
            }
            jacobian = Jacobian(residuals, at, r.Length);
        }
        return new LeastSquaresFit(at, jacobian.TransposeThisAndMultiply(jacobian), sum, r, converged);
    }

    private static double[] Move(
        double[] at,
        Matrix<double> curvature,
        Vector<double> slope,
        double damping,
        double[] scale
    )
    {
        Matrix<double> damped = curvature.Clone();
        for (int k = 0; k < at.Length; k++)
            damped[k, k] += damping * Math.Max(scale[k], 1e-12);
        Vector<double> move = damped.Solve(slope);
        return at.Select((value, k) => value - move[k]).ToArray();
    }

    private static bool Still(double[] before, double[] after) =>
        before.Zip(after).All(p => Math.Abs(p.First - p.Second) <= 1e-11 * (Math.Abs(p.First) + 1e-9));

    private static double Square(double[] r)
    {
        double sum = 0;
        foreach (double value in r)
            sum += value * value;
        return double.IsNaN(sum) ? double.PositiveInfinity : sum;
    }

    private static Matrix<double> Jacobian(Func<double[], double[]> residuals, double[] at, int rows)
    {
        Matrix<double> jacobian = Matrix<double>.Build.Dense(rows, at.Length);
        var moved = (double[])at.Clone();
        for (int k = 0; k < at.Length; k++)
        {
            double step = Difference * Math.Max(Math.Abs(at[k]), 1e-4);
            moved[k] = at[k] + step;
            double[] up = residuals(moved);
            moved[k] = at[k] - step;
            double[] down = residuals(moved);
            moved[k] = at[k];
            for (int i = 0; i < rows; i++)
                jacobian[i, k] = (up[i] - down[i]) / (2 * step);
        }
        return jacobian;
    }
}
