using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>
/// Binomial regression by Fisher scoring with step halving: maximum likelihood for any link, or for the logit Firth's
/// penalised likelihood
/// (D. Firth, Biometrika 80 (1993) 27; G. Heinze, M. Schemper, Statist. Med. 21 (2002) 2409), which stays finite under
/// separation.
/// </summary>
internal static class BinomialRegression
{
    private const int MostSteps = 200;

    /// <summary>Fits a model.</summary>
    /// <exception cref="ArgumentException">There are no groups, counts are impossible, or covariates are linearly
    /// dependent.</exception>
    internal static BinomialFit Fit(IReadOnlyList<BinomialGroup> groups, Link link = Link.Logit, bool penalised = false)
    {
        Check(groups, link, penalised);
        var data = new BinomialLikelihood(groups, link, penalised);
        Matrix<double> all = Matrix<double>.Build.DenseIdentity(data.Count);
        return Describe(data, Maximise(data, Vector<double>.Build.Dense(data.Count), all));
    }

    /// <summary>The greatest log likelihood when coefficients are start + directions times anything.</summary>
    internal static double ConstrainedMaximum(BinomialFit fit, Vector<double> start, Matrix<double> directions)
    {
        var data = new BinomialLikelihood(fit.Groups, fit.Link, fit.Penalised);
        return data.Value(Maximise(data, start, directions).Coefficients);
    }

    private static (Vector<double> Coefficients, bool Separated) Maximise(
        BinomialLikelihood data,
        Vector<double> start,
        Matrix<double> directions
    )
    {
        Vector<double> at = start;
        double value = data.Value(at);
        if (directions.ColumnCount == 0)
            return (at, false);
        for (int step = 0; step < MostSteps; step++)
        {
            (Vector<double> score, Matrix<double> information) = data.Derivatives(at);
            Matrix<double> reduced = directions.TransposeThisAndMultiply(information * directions);
            if (reduced.ConditionNumber() > 1e13)
                return (at, true);
            Vector<double> move = directions * reduced.Solve(directions.TransposeThisAndMultiply(score));
            double reach = data.LargestChange(move);
            double next = double.NaN;
            Vector<double> there = at;
            for (int halving = 0; halving < 40; halving++, move /= 2)
            {
                there = at + move;
                next = data.Value(there);
                if (next >= value - 1e-12 * Math.Abs(value))
                    break;
            }
            double gain = next - value;
            if (!(gain >= -1e-9 * Math.Abs(value)))
                return (at, false);
            (at, value) = (there, next);
            if (reach < 1e-11)
                return (at, false);
            // The likelihood stands still while the predictor still moves by whole units: the maximum is at infinity.
            if (!data.Penalised && gain < 1e-7 && reach > 0.05 && step > 10)
                return (at, true);
        }
        return (at, false);
    }

    private static BinomialFit Describe(BinomialLikelihood data, (Vector<double> Coefficients, bool Separated) found)
    {
        (_, Matrix<double> information) = data.Derivatives(found.Coefficients);
        (double deviance, double pearson) = data.Misfit(found.Coefficients);
        return new BinomialFit
        {
            Link = data.Link,
            Penalised = data.Penalised,
            Groups = data.Groups,
            Coefficients = found.Coefficients,
            Covariance = information.Inverse(),
            LogLikelihood = data.Value(found.Coefficients),
            Deviance = deviance,
            PearsonSquare = pearson,
            Separated = found.Separated,
        };
    }

    private static void Check(IReadOnlyList<BinomialGroup> groups, Link link, bool penalised)
    {
        if (groups.Count == 0)
            throw new ArgumentException("There is nothing to fit.", nameof(groups));
        if (penalised && link != Link.Logit)
            throw new ArgumentException("Only the logit can be penalised.", nameof(link));
        if (groups.Any(g => !(g.Trials >= 1 && g.Successes >= 0 && g.Successes <= g.Trials)))
            throw new ArgumentException(
                "Successes must lie between 0 and the number of trials, which is at least 1.",
                nameof(groups)
            );
        if (groups.Any(g => g.Covariates.Length != groups[0].Covariates.Length))
            throw new ArgumentException("Every group needs the same covariates.", nameof(groups));
        Matrix<double> design = Matrix<double>.Build.DenseOfRowArrays(groups.Select(g => g.Covariates));
        if (design.Rank() < design.ColumnCount)
            throw new ArgumentException("The covariates depend on each other.", nameof(groups));
    }
}
