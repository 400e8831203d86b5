using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Sampling;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// The likelihood of measured growths and felt words. Free parameters, in standard deviations: ln b, ln c, ln tau, the
/// logarithm of the deviation between prints and how far one person's words are shifted, all about their priors; and a,
/// about what the measured growths leave of it given the others, so that precise readings leave nothing to search for.
/// What is normal given these (one bias a caliper, X less Y, one misfit a setting, one deviation a print) is integrated
/// out of measured growths and drawn for the words.
/// </summary>
internal sealed class GrowthModel
{
    private const int Steady = 6;

    // The first four answer smoothly to measured growths.
    private const int B = 0,
        C = 1,
        Tau = 2,
        Between = 3,
        Smooth = 4,
        A = 4,
        Person = 5;
    private readonly ExposurePriors priors;
    private readonly Trial[] trials;
    private readonly GrowthLatents latents;
    private readonly FeltWords words;
    private readonly UnseenDrift drift;
    private readonly SeededRandom random = new(20260302);

    internal GrowthModel(IReadOnlyList<Trial> trials, ExposurePriors priors, double referenceTime)
    {
        this.trials = [.. trials];
        this.priors = priors;
        ReferenceTime = referenceTime;
        latents = new GrowthLatents(this.trials, priors);
        words = new FeltWords(this.trials, priors.Fits);
        drift = new UnseenDrift(priors.LightDrift, trials.Count);
    }

    internal double ReferenceTime { get; }

    internal GrowthLatents Latents => latents;

    internal WeightedDraws<GrowthSample> Draw(CancellationToken cancellation = default)
    {
        int dimension = drift.Dimension(Steady);
        return AdaptiveSampler.Draw(
            dimension,
            Judge,
            latents.Readings.Count > 0 ? Peak.Of(dimension, Smooth, Height) : null,
            cancellation
        );

        double Height(double[] z)
        {
            cancellation.ThrowIfCancellationRequested();
            return Known(z).LogLikelihood;
        }
    }

    private (GrowthSample, double) Judge(double[] z)
    {
        MeasuredGrowths known = Known(z);
        GrowthSample s = Bare(z) with { A = known.Growth(z[A]) };
        double[] drawn = latents.Draw(known.Around, s.BetweenPrints, known.LeftBy(s.A), random.Normal);
        double told =
            words.Count == 0
                ? 0
                : words.LogProbability(
                    i => Formula(s, i) + latents.OfPrint(drawn, i),
                    latents.Difference(drawn),
                    z[Person]
                );
        return (s with { Latents = drawn }, known.LogLikelihood + told);
    }

    private MeasuredGrowths Known(double[] z)
    {
        GrowthSample bare = Bare(z);
        return new MeasuredGrowths(
            new GrowthSpread(latents, bare.BetweenPrints),
            Left(bare),
            priors.GrowthMean,
            priors.GrowthDeviation
        );
    }

    private GrowthSample Bare(double[] z) =>
        new(
            0,
            priors.TimeEffect.At(z[B]),
            priors.RestEffect.At(z[C]),
            priors.RestTime.At(z[Tau]),
            priors.BetweenPrints.At(z[Between]),
            drift.At(z),
            []
        );

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
        double logTime = Math.Log(at.Time / ReferenceTime) - s.Drift * drift.Before(print);
        return s.Growth(logTime, at.Rest) + at.EdgeOffset;
    }
}
