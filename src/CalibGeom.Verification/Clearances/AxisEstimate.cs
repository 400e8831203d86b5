namespace CalibGeom.Verification.Clearances;

/// <summary>Scale and growth of one axis. Immutable.</summary>
public sealed record AxisEstimate
{
    /// <summary><c>x</c> or <c>y</c>.</summary>
    public required string Axis { get; init; }

    /// <summary>Proportional change s: -0.002 is 0.2 % too small.</summary>
    public required Estimate Scale { get; init; }

    /// <summary>Growth g per edge, mm; positive where solids grow.</summary>
    public required Estimate Growth { get; init; }

    /// <summary>Growth of the next print, mm per edge.</summary>
    public required Estimate NextGrowth { get; init; }

    /// <summary>Covariance of scale and growth, mm.</summary>
    public required double Covariance { get; init; }

    /// <summary>Whether readings said too little of scale, so that an assumption entered.</summary>
    public required bool ScaleAssumed { get; init; }

    /// <summary>Two-sided probability of a scale as far from zero by chance.</summary>
    public required double ScaleProbability { get; init; }

    /// <summary>The same for growth.</summary>
    public required double GrowthProbability { get; init; }
}
