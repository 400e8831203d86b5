using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.Distributions;

namespace CalibGeom.Verification.Decisions;

/// <summary>
/// How well several prints keep between limits: Cp = (high - low) / 6 s and Cpk = nearest limit / 3 s (ISO 22514-2
/// names them), each with its 95 % interval. s is what was observed, measuring included. Immutable.
/// </summary>
public sealed record Capability
{
    /// <summary>The fewest prints a capability is said of.</summary>
    public const int Fewest = 5;

    private Capability(
        int count,
        double mean,
        double s,
        double cp,
        Interval cpInterval,
        double cpk,
        Interval cpkInterval
    )
    {
        Count = count;
        Mean = mean;
        StandardDeviation = s;
        Cp = cp;
        CpInterval = cpInterval;
        Cpk = cpk;
        CpkInterval = cpkInterval;
    }

    /// <summary>How many prints.</summary>
    public int Count { get; }

    /// <summary>Their mean.</summary>
    public double Mean { get; }

    /// <summary>Their standard deviation.</summary>
    public double StandardDeviation { get; }

    /// <summary>Width of the limits over six standard deviations.</summary>
    public double Cp { get; }

    /// <summary>95 % interval of Cp, from chi-squared.</summary>
    public Interval CpInterval { get; }

    /// <summary>Distance of the mean from the nearer limit over three standard deviations.</summary>
    public double Cpk { get; }

    /// <summary>
    /// 95 % interval of Cpk: Cpk (1 +- z sqrt(1 / (9 n Cpk^2) + 1 / (2 (n - 1)))) (Bissell, Appl. Stat. 39 (1990) 331).
    /// </summary>
    public Interval CpkInterval { get; }

    /// <summary>The capability of values, one a print.</summary>
    /// <param name="values">At least five.</param>
    /// <param name="limits">Both finite.</param>
    /// <exception cref="ArgumentException">There are too few, they are all equal, or a limit is missing.</exception>
    public static Capability Of(IReadOnlyList<double> values, ToleranceLimits limits)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(limits);
        if (values.Count < Fewest)
            throw new ArgumentException(
                $"values holds {values.Count}; a capability needs at least {Fewest} prints.",
                nameof(values)
            );
        if (!double.IsFinite(limits.Width))
            throw new ArgumentException("Both limits must be finite.", nameof(limits));
        SampleStatistics s = SampleStatistics.Of(values);
        if (s.StandardDeviation == 0)
            throw new ArgumentException("All values are equal; no capability follows.", nameof(values));
        int free = s.Count - 1;
        double cp = limits.Width / (6 * s.StandardDeviation),
            cpk = Math.Min(limits.High - s.Mean, s.Mean - limits.Low) / (3 * s.StandardDeviation),
            tail = (1 - Coverage.Level) / 2,
            half =
                Coverage.StudentFactor(double.PositiveInfinity)
                * Math.Sqrt(1 / (9.0 * s.Count) + cpk * cpk / (2.0 * free));
        return new Capability(
            s.Count,
            s.Mean,
            s.StandardDeviation,
            cp,
            new Interval(
                cp * Math.Sqrt(ChiSquared.InvCDF(free, tail) / free),
                cp * Math.Sqrt(ChiSquared.InvCDF(free, 1 - tail) / free)
            ),
            cpk,
            new Interval(cpk - half, cpk + half)
        );
    }
}
