using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// How a person feels fits: the threshold's deviation splits into the person's own bias, shared by all that one feels;
/// the joint's, shared by repeats of it; and a rest that is new each time. Shares 0.49, 0.36 and 0.15 of the variance,
/// without a source. So a word repeated is nearly no news.
/// </summary>
internal sealed class FeltPerson
{
    private const double PersonShare = 0.7;
    private const double JointShare = 0.6;
    private readonly double deviation;
    private readonly FitThresholds rest;

    internal FeltPerson(FitThresholds thresholds)
    {
        deviation = thresholds.Deviation;
        double share = Math.Sqrt(1 - PersonShare * PersonShare - JointShare * JointShare);
        rest = new FitThresholds(thresholds.Binds, thresholds.Slides, thresholds.Rattles, share * deviation);
    }

    /// <summary>One person's shift, mm, then one for each joint.</summary>
    internal void Draw(SeededRandom random, double[] shifts)
    {
        double person = PersonShare * deviation * random.Normal();
        for (int j = 0; j < shifts.Length; j++)
            shifts[j] = person + JointShare * deviation * random.Normal();
    }

    /// <summary>The probability of a word for clearances and a shift.</summary>
    internal double Probability(FeltFit fit, double x, double y, double shift) =>
        rest.Probability(fit, Math.Min(x, y) - shift, (x + y) / 2 - shift);
}
