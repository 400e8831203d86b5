namespace CalibGeom.Verification.Tuning;

/// <summary>
/// How rest before exposure draws edges back: c (1 - exp(-r / tau)). An assumption of ours; no published law was found.
/// Immutable.
/// </summary>
public sealed record RestLaw
{
    /// <summary>A law.</summary>
    /// <param name="effect">c: how far an edge draws back after a long rest in mm, 0 to 1. Default 0.006.</param>
    /// <param name="time">tau: 63 % of it is reached after this rest in s, above 0 and at most 600. Default 1.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public RestLaw(double effect = 0.006, double time = 1)
    {
        Effect = Require.Within(effect, 0, 1, "effect of rest", "mm", nameof(effect));
        Time = Require.Positive(time, 600, "time of rest", "s", nameof(time));
    }

    /// <summary>c, mm.</summary>
    public double Effect { get; }

    /// <summary>tau, s.</summary>
    public double Time { get; }

    /// <summary>How far edges draw back, mm.</summary>
    /// <param name="rest">Rest before exposure in s, 0 or more.</param>
    public double Retreat(double rest) => Effect * (1 - Math.Exp(-rest / Time));
}
