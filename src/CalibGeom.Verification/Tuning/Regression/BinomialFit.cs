using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>A fitted binomial regression.</summary>
internal sealed record BinomialFit
{
    /// <summary>The link.</summary>
    internal required Link Link { get; init; }

    /// <summary>Whether the likelihood was Firth's penalised one.</summary>
    internal required bool Penalised { get; init; }

    /// <summary>The data.</summary>
    internal required BinomialGroup[] Groups { get; init; }

    /// <summary>The coefficients; meaningless when <see cref="Separated"/>.</summary>
    internal required Vector<double> Coefficients { get; init; }

    /// <summary>The inverse of the expected information at the coefficients.</summary>
    internal required Matrix<double> Covariance { get; init; }

    /// <summary>
    /// The logarithm of the likelihood without binomial coefficients, with the penalty where there is one.
    /// </summary>
    internal required double LogLikelihood { get; init; }

    /// <summary>Twice the distance of the likelihood from that of a perfect description.</summary>
    internal required double Deviance { get; init; }

    /// <summary>Pearson's sum of squared standardised residuals.</summary>
    internal required double PearsonSquare { get; init; }

    /// <summary>
    /// Whether some combination of covariates parts successes from failures, so that the maximum lies at infinity.
    /// </summary>
    internal required bool Separated { get; init; }

    /// <summary>The standard error of a coefficient.</summary>
    internal double StandardError(int coefficient) => Math.Sqrt(Covariance[coefficient, coefficient]);

    /// <summary>The fitted probability at values of the covariates.</summary>
    internal double Probability(double[] covariates) =>
        Links.Probability(Link, Vector<double>.Build.Dense(covariates).DotProduct(Coefficients)).P;
}
