namespace CalibGeom.Verification.Clearances;

/// <summary>Whether the readings fit the model of scale, growth and the errors that were assumed. Immutable.</summary>
public sealed record ModelCheck
{
    /// <summary>Below this probability the model is said not to hold.</summary>
    public const double Least = 0.01;

    /// <summary>Sum of squared residuals in units of their variances, gross errors left out.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Rows less coefficients; 0 when nothing can be checked.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>The probability of a chi-square at least as large by chance; 1 without degrees of freedom.</summary>
    public required double Probability { get; init; }

    /// <summary>
    /// Form error that the intervals rest on, mm: the assumed one, or the one raised until the readings fit.
    /// </summary>
    public required double FormError { get; init; }

    /// <summary>Whether the form error was raised.</summary>
    public required bool Raised { get; init; }

    /// <summary>
    /// Birge ratio: root of chi-square over degrees of freedom (Birge, Phys. Rev. 40 (1932) 207); 1 is as expected.
    /// </summary>
    public double BirgeRatio => DegreesOfFreedom > 0 ? Math.Sqrt(ChiSquare / DegreesOfFreedom) : 1;

    /// <summary>Whether the model holds as it was assumed.</summary>
    public bool Holds => Probability >= Least;
}
