using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning.Sampling;

/// <summary>
/// Draws from what is believed after the data by adaptive multiple importance sampling (J.-M. Cornuet et al.,
/// Scandinavian Journal of Statistics 39 (2012) 798): parameters are standard normal before the data; rounds of draws
/// come closer and closer to the answer, and every draw is weighed against the mixture of all rounds. A flattened
/// likelihood keeps early rounds wide. Fixed seeds: the same data give the same draws.
/// </summary>
internal static class AdaptiveSampler
{
    private const double Widening = 1.25,
        LeastEffective = 60;
    private static readonly int[] Rounds = [250, 150, 150, 350];

    /// <param name="dimension">How many parameters.</param>
    /// <param name="logLikelihood">The logarithm of the likelihood of the data at a point.</param>
    internal static WeightedDraws Draw(int dimension, Func<double[], double> logLikelihood)
    {
        var random = new SeededRandom(20260301);
        var points = new List<double[]>();
        var data = new List<double>();
        var proposals = new List<GaussianProposal>();
        GaussianProposal prior = GaussianProposal.Standard(dimension),
            next = prior;
        double[] logs = [];
        for (int round = 0; round < Rounds.Length; round++)
        {
            proposals.Add(next);
            for (int i = 0; i < Rounds[round]; i++)
            {
                double[] point = next.Draw(random.Normal);
                points.Add(point);
                data.Add(logLikelihood(point) + prior.LogDensity(point));
            }
            logs = LogWeights(points, data, proposals);
            next = GaussianProposal.Of(points, Flattened(logs), Widening);
        }
        return new WeightedDraws(points.ToArray(), Weighted.FromLogarithms(logs));
    }

    private static double[] LogWeights(List<double[]> points, List<double> data, List<GaussianProposal> proposals)
    {
        var logs = new double[points.Count];
        for (int i = 0; i < logs.Length; i++)
        {
            double most = double.NegativeInfinity,
                sum = 0;
            for (int k = 0; k < proposals.Count; k++)
            {
                double l = Math.Log(Rounds[k]) + proposals[k].LogDensity(points[i]);
                (sum, most) = l > most ? (sum * Math.Exp(most - l) + 1, l) : (sum + Math.Exp(l - most), most);
            }
            logs[i] = data[i] - most - Math.Log(sum);
        }
        return logs;
    }

    private static double[] Flattened(double[] logs)
    {
        for (double power = 1; power > 0.001; power *= 0.7)
            if (Weighted.FromLogarithms(logs, power) is var w && Weighted.EffectiveCount(w) >= LeastEffective)
                return w;
        return Weighted.FromLogarithms(logs, 0.001);
    }
}
