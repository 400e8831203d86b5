namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>Trials at the same values of the covariates.</summary>
/// <param name="Covariates">The covariates; the first is 1 where the model has a constant.</param>
/// <param name="Trials">How many, at least 1.</param>
/// <param name="Successes">How many succeeded.</param>
internal sealed record BinomialGroup(double[] Covariates, double Trials, double Successes)
{
    /// <summary>Groups of one covariate with a constant.</summary>
    internal static BinomialGroup[] Of(
        IReadOnlyList<double> x,
        IReadOnlyList<double> trials,
        IReadOnlyList<double> successes
    ) => x.Select((value, i) => new BinomialGroup([1, value], trials[i], successes[i])).ToArray();
}
