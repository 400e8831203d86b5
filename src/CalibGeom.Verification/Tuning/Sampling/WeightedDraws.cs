namespace CalibGeom.Verification.Tuning.Sampling;

/// <summary>Draws of parameters and their weights, which add up to one.</summary>
/// <param name="Points">The draws, in standard deviations of the prior.</param>
/// <param name="Weights">Their weights.</param>
internal sealed record WeightedDraws(double[][] Points, double[] Weights)
{
    internal double EffectiveCount => Weighted.EffectiveCount(Weights);
}
