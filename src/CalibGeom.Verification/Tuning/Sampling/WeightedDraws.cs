namespace CalibGeom.Verification.Tuning.Sampling;

/// <summary>What was drawn, with weights that add up to one.</summary>
/// <typeparam name="T">What a draw stands for.</typeparam>
/// <param name="Drawn">The draws.</param>
/// <param name="Weights">Their weights.</param>
internal sealed record WeightedDraws<T>(T[] Drawn, double[] Weights)
{
    internal double EffectiveCount => Weighted.EffectiveCount(Weights);
}
