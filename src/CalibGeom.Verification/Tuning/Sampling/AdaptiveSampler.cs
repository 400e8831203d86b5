using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning.Sampling;

/// <summary>
/// Draws from what is believed after the data by adaptive multiple importance sampling (J.-M. Cornuet et al.,
/// Scandinavian Journal of Statistics 39 (2012) 798): parameters are standard normal before the data; rounds of draws
/// come closer and closer to the answer, and every draw is weighed against the mixture of all rounds. The first round
/// is the prior, so that nothing is missed; the second stands where a <see cref="Peak"/> was found, if one was. A
/// flattened likelihood keeps early rounds wide. Fixed seeds: the same data give the same draws.
/// </summary>
internal static class AdaptiveSampler
{
    private const double Widening = 1.25,
        LeastEffective = 60;
    private static readonly int[] Rounds = [200, 200, 200, 300];

    /// <param name="dimension">How many parameters.</param>
    /// <param name="judge">What a point stands for, and the logarithm of the likelihood of the data there.</param>
    /// <param name="peak">Where most of the answer lies, if that was searched for.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static WeightedDraws<T> Draw<T>(
        int dimension,
        Func<double[], (T Drawn, double LogLikelihood)> judge,
        GaussianProposal? peak = null,
        CancellationToken cancellation = default
    )
    {
        var random = new SeededRandom(20260301);
        var points = new List<double[]>();
        var drawn = new List<T>();
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
                cancellation.ThrowIfCancellationRequested();
                double[] point = next.Draw(random.Normal);
                (T stands, double likelihood) = judge(point);
                points.Add(point);
                drawn.Add(stands);
                data.Add(likelihood + prior.LogDensity(point));
            }
            logs = LogWeights(points, data, proposals);
            next = round == 0 && peak is not null ? peak : GaussianProposal.Of(points, Flattened(logs), Widening);
        }
        return new WeightedDraws<T>([.. drawn], Weighted.FromLogarithms(logs));
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
