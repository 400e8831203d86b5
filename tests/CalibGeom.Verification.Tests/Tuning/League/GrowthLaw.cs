namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>How growth of a hidden printer answers to x = ln(t / t0), with slope b at t0.</summary>
internal enum GrowthLaw
{
    /// <summary>b x.</summary>
    Logarithm,

    /// <summary>b (exp(0.5 x) - 1) / 0.5: ever steeper.</summary>
    Power,

    /// <summary>b (1 - exp(-0.8 x)) / 0.8: flattens out.</summary>
    Saturation,
}
