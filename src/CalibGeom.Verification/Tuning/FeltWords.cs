using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// The words of all prints. One person draws the limits between the words always at about the same place: four fifths
/// of the variance of the thresholds is one shift that all words share, so that the same word again is nearly no news.
/// </summary>
internal sealed class FeltWords
{
    private const double SharedVariance = 0.8;
    private readonly (int Print, double X, double Y, FeltFit Fit)[] words;
    private readonly FitThresholds own;
    private readonly double shared;

    internal FeltWords(Trial[] trials, FitThresholds fits)
    {
        shared = fits.Deviation * Math.Sqrt(SharedVariance);
        own = new FitThresholds(fits.Binds, fits.Slides, fits.Rattles, fits.Deviation * Math.Sqrt(1 - SharedVariance));
        words =
        [
            .. trials.SelectMany(
                (t, i) => t.Joints.Where(j => j.Fit is not null).Select(j => (i, j.Designed, j.DesignedY, j.Fit!.Value))
            ),
        ];
    }

    internal int Count => words.Length;

    /// <param name="growthOf">Growth of a print, mean of the axes, mm.</param>
    /// <param name="difference">Growth along X less along Y, mm.</param>
    /// <param name="person">The shift that all words share, in its standard deviations.</param>
    internal double LogProbability(Func<int, double> growthOf, double difference, double person)
    {
        double shift = person * shared,
            sum = 0;
        foreach ((int print, double designedX, double designedY, FeltFit fit) in words)
        {
            double growth = growthOf(print),
                x = designedX - 2 * growth - difference + shift,
                y = designedY - 2 * growth + difference + shift;
            sum += Math.Log(Math.Max(own.Probability(fit, Math.Min(x, y), (x + y) / 2), 1e-12));
        }
        return sum;
    }
}
