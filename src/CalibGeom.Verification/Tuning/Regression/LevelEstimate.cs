using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>
/// The value of one covariate at which a probability is reached, the others being fixed, with its standard error by the
/// delta method and
/// intervals by Fieller's theorem and by the profile likelihood.
/// </summary>
internal sealed class LevelEstimate
{
    private readonly BinomialFit fit;
    private readonly double[] others;
    private readonly int covariate;
    private readonly double predictor;

    /// <summary>A level.</summary>
    /// <param name="fit">The fitted model.</param>
    /// <param name="probability">The probability, above 0 and below 1.</param>
    /// <param name="covariate">Which covariate, not the constant.</param>
    /// <param name="others">Values of all covariates; the one asked for is ignored.</param>
    internal LevelEstimate(BinomialFit fit, double probability, int covariate = 1, double[]? others = null)
    {
        this.fit = fit;
        this.covariate = covariate;
        this.others = others ?? [1, 0];
        predictor = Links.Predictor(fit.Link, probability);
        Vector<double> rest = Rest();
        double slope = fit.Coefficients[covariate];
        Value = (predictor - rest.DotProduct(fit.Coefficients)) / slope;
        Constant = rest * fit.Covariance * rest;
        Cross = (rest * fit.Covariance)[covariate];
        Square = fit.Covariance[covariate, covariate];
        StandardError = Math.Sqrt(Constant + 2 * Value * Cross + Value * Value * Square) / Math.Abs(slope);
    }

    /// <summary>The level.</summary>
    internal double Value { get; }

    /// <summary>Its standard error by the delta method.</summary>
    internal double StandardError { get; }

    private double Constant { get; }

    private double Cross { get; }

    private double Square { get; }

    /// <summary>The interval estimate plus and minus a normal quantile times the standard error.</summary>
    internal (double Low, double High) Wald(double confidence = 0.95)
    {
        double z = Normal.InvCDF(0, 1, (1 + confidence) / 2);
        return (Value - z * StandardError, Value + z * StandardError);
    }

    /// <summary>Fieller's interval; null when it is no finite interval (the slope is not told from zero).</summary>
    internal (double Low, double High)? Fieller(double confidence = 0.95)
    {
        double z = Normal.InvCDF(0, 1, (1 + confidence) / 2),
            slope = fit.Coefficients[covariate];
        double g = z * z * Square / (slope * slope);
        if (g >= 1)
            return null;
        double centre = Value + g / (1 - g) * (Value + Cross / Square);
        double under = Constant + 2 * Value * Cross + Value * Value * Square - g * (Constant - Cross * Cross / Square);
        double half = z / (Math.Abs(slope) * (1 - g)) * Math.Sqrt(under);
        return (centre - half, centre + half);
    }

    /// <summary>
    /// The levels that the likelihood (penalised where the fit was) cannot tell from the estimate; an end is infinite
    /// when the likelihood
    /// does not fall enough within a distance.
    /// </summary>
    internal (double Low, double High) Profile(double furthest, double confidence = 0.95)
    {
        double z = Normal.InvCDF(0, 1, (1 + confidence) / 2);
        double floor = fit.LogLikelihood - z * z / 2;
        return (End(-1, furthest, floor), End(1, furthest, floor));
    }

    private double End(int direction, double furthest, double floor)
    {
        double step = Math.Min(furthest / 8, Math.Max(StandardError, furthest * 1e-6)),
            near = 0;
        double far = step;
        while (Constrained(Value + direction * far) > floor)
        {
            if (far >= furthest)
                return direction * double.PositiveInfinity;
            near = far;
            far = Math.Min(furthest, far * 1.6);
        }
        double inside = Constrained(Value + direction * near) - floor,
            outside = Constrained(Value + direction * far) - floor;
        // Illinois variant of the false position between a place inside and one outside the interval.
        for (int i = 0; i < 60 && far - near > 1e-11 * furthest; i++)
        {
            double middle = near + (far - near) * inside / (inside - outside),
                at = Constrained(Value + direction * middle) - floor;
            if (Math.Abs(at) < 1e-9)
                return Value + direction * middle;
            if (at > 0)
                (near, inside, outside) = (middle, at, outside / 2);
            else
                (far, outside, inside) = (middle, at, inside / 2);
        }
        return Value + direction * (near + far) / 2;
    }

    // The constant follows from the other coefficients: b0 = predictor - b (level) - rest.
    private double Constrained(double level)
    {
        int n = fit.Coefficients.Count;
        Vector<double> start = Vector<double>.Build.Dense(n);
        start[0] = predictor;
        Matrix<double> directions = Matrix<double>.Build.Dense(n, n - 1);
        for (int k = 1; k < n; k++)
        {
            directions[0, k - 1] = -(k == covariate ? level : others[k]);
            directions[k, k - 1] = 1;
        }
        Vector<double> offset = fit.Coefficients.SubVector(1, n - 1);
        return BinomialRegression.ConstrainedMaximum(fit, start + directions * offset, directions);
    }

    private Vector<double> Rest()
    {
        Vector<double> rest = Vector<double>.Build.Dense(others);
        rest[covariate] = 0;
        return rest;
    }
}
