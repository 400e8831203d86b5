namespace CalibGeom.Verification.Clearances;

/// <summary>Scale and growth of one axis.</summary>
/// <param name="Axis"><c>x</c> or <c>y</c>.</param>
/// <param name="Scale">Proportional change s: -0.002 is 0.2 % too small.</param>
/// <param name="Growth">Growth g per edge, mm; positive where solids grow.</param>
/// <param name="Covariance">Covariance of scale and growth, mm.</param>
/// <param name="ScaleAssumed">Whether readings said too little of scale, so that an assumption entered.</param>
/// <param name="ScaleProbability">Two-sided probability of a scale as far from zero by chance.</param>
/// <param name="GrowthProbability">The same for growth.</param>
public sealed record AxisEstimate(
    string Axis,
    Estimate Scale,
    Estimate Growth,
    double Covariance,
    bool ScaleAssumed,
    double ScaleProbability,
    double GrowthProbability
);
