using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace CalibGeom.Verification.Maps;

/// <summary>
/// Light as it may be: tilts and bowl as the readings have them when, before any reading, each is normal about nothing.
/// How large the tilts are, how large the bowl, whether there is one, and how far the stated uncertainties hold are
/// not known; each stands on a ladder and is weighed by how well it foretells the readings. Immutable.
/// </summary>
internal sealed class PossibleLight
{
    // ln(light), from even to a tenth of a per cent to half of it lost. Where the ladder ends, and what a bowl weighs,
    // was chosen by how often what is named is right, and checked on other plates: see map.md.
    private static readonly double[] Sizes = [0.00125, 0.0025, 0.005, 0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64];
    private const double NoBowl = 1e-4;

    // Planes, bowls that are dark outside and bowls that are dark inside are equally likely before any reading.
    private const double Bowls = 2;
    private const double ScatterStep = 1.4;

    private readonly List<(Vector<double> Middle, Matrix<double> Reach)> parts = [];
    private readonly List<double> upTo = [];

    private PossibleLight(LightEvidence evidence, double trust)
    {
        var weights = new List<double>();
        foreach (double scatter in Scatters(evidence, trust))
        foreach (double tilt in Sizes)
        {
            double before = LogOf(scatter, evidence, trust);
            weights.Add(before + Add(evidence, scatter, tilt, NoBowl));
            before += Math.Log(Bowls / Sizes.Length);
            weights.AddRange(Sizes.Select(bowl => before + Add(evidence, scatter, tilt, bowl)));
        }
        double most = weights.Max(),
            sum = 0;
        upTo.AddRange(weights.Select(w => sum += Math.Exp(w - most)));
    }

    /// <summary>What may be.</summary>
    /// <param name="evidence">What the readings say.</param>
    /// <param name="trust">How many readings' worth the stated uncertainties count.</param>
    internal static PossibleLight Of(LightEvidence evidence, double trust) => new(evidence, trust);

    /// <summary>Tilts and bowl of one light that may be.</summary>
    internal double[] Draw(SeededRandom random)
    {
        int at = upTo.BinarySearch(random.Uniform() * upTo[^1]);
        (Vector<double> middle, Matrix<double> reach) = parts[at < 0 ? ~at : at];
        var normal = Vector<double>.Build.Dense(Surface.AllTerms, _ => random.Normal());
        return (middle + reach * normal).ToArray();
    }

    private static IEnumerable<double> Scatters(LightEvidence evidence, double trust)
    {
        double last = Math.Max(10, 2 * (trust + evidence.Squares) / (trust + evidence.Freedom));
        for (double scatter = 0.1; scatter < last; scatter *= ScatterStep)
            yield return scatter;
    }

    private static double LogOf(double scatter, LightEvidence evidence, double trust) =>
        -(trust + evidence.Freedom) / 2 * Math.Log(scatter) - (trust + evidence.Squares) / 2 / scatter;

    private double Add(LightEvidence evidence, double scatter, double tilt, double bowl)
    {
        double[] firmness = [1 / tilt, 1 / tilt, 1 / bowl];
        var before = Matrix<double>.Build.DenseOfDiagonalArray([.. firmness.Select(f => f * f)]);
        Cholesky<double> known = (evidence.Information / scatter + before).Cholesky();
        Vector<double> middle = known.Solve(evidence.Score / scatter);
        parts.Add((middle, known.Factor.Inverse().Transpose()));
        return firmness.Sum(Math.Log) - known.DeterminantLn / 2 + middle * evidence.Score / scatter / 2;
    }
}
