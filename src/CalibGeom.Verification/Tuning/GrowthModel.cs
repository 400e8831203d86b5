using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Sampling;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// The likelihood of measured growths and felt words. Free parameters, in standard deviations of their priors: a, ln b,
/// ln c, ln tau, the logarithm of the deviation between prints, and how far one person's words are shifted. What is
/// normal given these (one bias a caliper, X less Y, one misfit a setting, one deviation a print) is integrated out of
/// measured growths and drawn for the words.
/// </summary>
internal sealed class GrowthModel
{
    internal const int Dimension = 6;
    private const int A = 0,
        B = 1,
        C = 2,
        Tau = 3,
        Between = 4,
        Person = 5;
    private const int Nodes = 9;
    private const double NodeStep = 0.5;
    private readonly ExposurePriors priors;
    private readonly Trial[] trials;
    private readonly GrowthLatents latents;
    private readonly LowerRoot[] roots;
    private readonly FeltWords words;
    private readonly SeededRandom random = new(20260302);

    internal GrowthModel(IReadOnlyList<Trial> trials, ExposurePriors priors, double referenceTime)
    {
        this.trials = [.. trials];
        this.priors = priors;
        ReferenceTime = referenceTime;
        latents = new GrowthLatents(this.trials, priors);
        roots = [.. Enumerable.Range(0, Nodes).Select(n => new LowerRoot(latents.Covariance(Deviation(n))))];
        words = new FeltWords(this.trials, priors.Fits);
    }

    internal double ReferenceTime { get; }

    internal GrowthLatents Latents => latents;

    internal WeightedDraws Draw() => AdaptiveSampler.Draw(Dimension, LogLikelihood);

    /// <summary>The physical parameters at a point, with the normal ones drawn given the data.</summary>
    internal GrowthSample Sample(double[] z)
    {
        GrowthSample s = Physical(z);
        return s with { Latents = latents.Draw(roots[Node(z)], s.BetweenPrints, Left(s), random.Normal) };
    }

    private double LogLikelihood(double[] z)
    {
        GrowthSample s = Physical(z);
        double[] left = Left(s);
        LowerRoot root = roots[Node(z)];
        double measured = left.Length == 0 ? 0 : -0.5 * root.SquaredLength(left) - root.LogDiagonal;
        if (words.Count == 0)
            return measured;
        double[] drawn = latents.Draw(root, s.BetweenPrints, left, random.Normal);
        return measured
            + words.LogProbability(
                i => Formula(s, i) + latents.OfPrint(drawn, i),
                latents.Difference(drawn),
                z[Person]
            );
    }

    // What the formula and the offsets entered leave of each measured growth.
    private double[] Left(GrowthSample s)
    {
        var growths = new double[trials.Length];
        for (int i = 0; i < growths.Length; i++)
            growths[i] = Formula(s, i);
        var left = new double[latents.Readings.Count];
        for (int j = 0; j < left.Length; j++)
            left[j] = latents.Readings[j].Value - growths[latents.Readings[j].Print];
        return left;
    }

    private double Formula(GrowthSample s, int print)
    {
        ExposureSettings at = trials[print].Settings;
        return s.Growth(Math.Log(at.Time / ReferenceTime), at.Rest) + at.EdgeOffset;
    }

    private GrowthSample Physical(double[] z) =>
        new(
            priors.GrowthMean + priors.GrowthDeviation * z[A],
            priors.TimeEffect.At(z[B]),
            priors.RestEffect.At(z[C]),
            priors.RestTime.At(z[Tau]),
            Deviation(Node(z)),
            []
        );

    private static int Node(double[] z) => Math.Clamp((int)Math.Round(z[Between] / NodeStep) + Nodes / 2, 0, Nodes - 1);

    private double Deviation(int node) => priors.BetweenPrints.At((node - Nodes / 2) * NodeStep);
}
