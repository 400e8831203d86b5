using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>The log likelihood of binomial data, its score and its expected information.</summary>
internal sealed class BinomialLikelihood
{
    private readonly Matrix<double> design;

    internal BinomialLikelihood(IReadOnlyList<BinomialGroup> groups, Link link, bool penalised)
    {
        Groups = groups.ToArray();
        Link = link;
        Penalised = penalised;
        design = Matrix<double>.Build.DenseOfRowArrays(Groups.Select(g => g.Covariates));
    }

    internal BinomialGroup[] Groups { get; }

    internal Link Link { get; }

    internal bool Penalised { get; }

    internal int Count => design.ColumnCount;

    /// <summary>The log likelihood; penalised by half the log determinant of the information (Jeffreys).</summary>
    internal double Value(Vector<double> coefficients)
    {
        Vector<double> eta = design * coefficients;
        double sum = 0;
        for (int i = 0; i < Groups.Length; i++)
        {
            (double p, double q) = Links.Probability(Link, eta[i]);
            sum += Term(Groups[i].Successes, p) + Term(Groups[i].Trials - Groups[i].Successes, q);
        }
        if (!Penalised)
            return sum;
        double determinant = Information(Weights(eta)).Determinant();
        return determinant > 0 ? sum + Math.Log(determinant) / 2 : double.NegativeInfinity;
    }

    /// <summary>The (Firth-modified) score and the expected information.</summary>
    internal (Vector<double> Score, Matrix<double> Information) Derivatives(Vector<double> coefficients)
    {
        Vector<double> eta = design * coefficients;
        Vector<double> weights = Weights(eta),
            pull = Vector<double>.Build.Dense(Groups.Length);
        Matrix<double> information = Information(weights);
        Matrix<double>? inverse = Penalised ? information.Inverse() : null;
        for (int i = 0; i < Groups.Length; i++)
        {
            (double p, double q) = Links.Probability(Link, eta[i]);
            double slope = Links.Slope(Link, eta[i]),
                variance = Math.Max(p * q, 1e-300);
            pull[i] = (Groups[i].Successes * q - (Groups[i].Trials - Groups[i].Successes) * p) * slope / variance;
            if (inverse is null)
                continue;
            Vector<double> row = design.Row(i);
            pull[i] += weights[i] * row.DotProduct(inverse * row) * (q - p) / 2;
        }
        return (design.TransposeThisAndMultiply(pull), information);
    }

    /// <summary>The largest change of a linear predictor that a change of the coefficients makes.</summary>
    internal double LargestChange(Vector<double> move) => (design * move).AbsoluteMaximum();

    /// <summary>Deviance and Pearson's sum of squares.</summary>
    internal (double Deviance, double Pearson) Misfit(Vector<double> coefficients)
    {
        Vector<double> eta = design * coefficients;
        double deviance = 0,
            pearson = 0;
        for (int i = 0; i < Groups.Length; i++)
        {
            (double p, double q) = Links.Probability(Link, eta[i]);
            double n = Groups[i].Trials,
                y = Groups[i].Successes;
            deviance += 2 * (Term(y, y / n) + Term(n - y, 1 - y / n) - Term(y, p) - Term(n - y, q));
            pearson += (y - n * p) * (y - n * p) / Math.Max(n * p * q, 1e-300);
        }
        return (deviance, pearson);
    }

    private static double Term(double count, double probability) =>
        count == 0 ? 0 : count * Math.Log(Math.Max(probability, 1e-300));

    private Vector<double> Weights(Vector<double> eta) =>
        Vector<double>.Build.Dense(
            Groups.Length,
            i =>
            {
                (double p, double q) = Links.Probability(Link, eta[i]);
                double slope = Links.Slope(Link, eta[i]);
                return Groups[i].Trials * slope * slope / Math.Max(p * q, 1e-300);
            }
        );

    private Matrix<double> Information(Vector<double> weights) =>
        design.TransposeThisAndMultiply(
            Matrix<double>.Build.Dense(design.RowCount, Count, (r, c) => weights[r] * design[r, c])
        );
}
