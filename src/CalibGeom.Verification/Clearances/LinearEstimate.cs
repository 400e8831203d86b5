using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// An estimate whose error is a known combination of independent errors: estimate less truth = sum of factor times
/// source.
/// </summary>
internal sealed class LinearEstimate
{
    private readonly IReadOnlyList<ErrorSource> sources;

    internal LinearEstimate(double value, double[] factors, IReadOnlyList<ErrorSource> sources)
    {
        Value = value;
        Factors = factors;
        this.sources = sources;
        StandardUncertainty = Math.Sqrt(Math.Max(0, Covariance(this)));
    }

    internal double Value { get; }

    internal double[] Factors { get; }

    internal double StandardUncertainty { get; }

    internal IReadOnlyList<ErrorSource> Sources => sources;

    internal double DegreesOfFreedom =>
        Coverage.EffectiveDegreesOfFreedom(Groups().Select(g => (Math.Sqrt(g.Variance), g.First.DegreesOfFreedom)));

    internal double Covariance(LinearEstimate other)
    {
        double sum = 0;
        int shared = Math.Min(Factors.Length, other.Factors.Length);
        for (int k = 0; k < shared; k++)
            sum += Factors[k] * other.Factors[k] * sources[k].U * sources[k].U;
        return sum;
    }

    /// <summary>Standard uncertainty from the sources of a kind alone.</summary>
    internal double Part(Func<ErrorSource, bool> which)
    {
        double sum = 0;
        for (int k = 0; k < Factors.Length; k++)
            if (which(sources[k]))
                sum += Factors[k] * Factors[k] * sources[k].U * sources[k].U;
        return Math.Sqrt(sum);
    }

    internal LinearEstimate Minus(LinearEstimate other) => Combine(1, other, -1);

    internal LinearEstimate Combine(double a, LinearEstimate other, double b)
    {
        double[] factors = new double[Math.Max(Factors.Length, other.Factors.Length)];
        for (int k = 0; k < Factors.Length; k++)
            factors[k] = a * Factors[k];
        for (int k = 0; k < other.Factors.Length; k++)
            factors[k] += b * other.Factors[k];
        return new LinearEstimate(
            a * Value + b * other.Value,
            factors,
            Factors.Length >= other.Factors.Length ? sources : other.sources
        );
    }

    internal UncertaintyBudget Budget()
    {
        double variance = StandardUncertainty * StandardUncertainty;
        BudgetComponent[] components = Groups()
            .Select(g =>
            {
                double own = g.First.U,
                    contribution = Math.Sqrt(g.Variance);
                return new BudgetComponent
                {
                    Name = g.First.Component,
                    Value = 0,
                    StandardUncertainty = own,
                    Evaluation = g.First.Evaluation,
                    Shape = g.First.Shape,
                    DegreesOfFreedom = g.First.DegreesOfFreedom,
                    Sensitivity = own > 0 ? contribution / own : 0,
                    Share = variance > 0 ? g.Variance / variance : 0,
                };
            })
            .ToArray();
        return new UncertaintyBudget(Value, StandardUncertainty, DegreesOfFreedom, components);
    }

    private IEnumerable<(ErrorSource First, double Variance)> Groups()
    {
        var groups = new Dictionary<string, (ErrorSource First, double Variance)>(StringComparer.Ordinal);
        for (int k = 0; k < Factors.Length; k++)
        {
            double v = Factors[k] * Factors[k] * sources[k].U * sources[k].U;
            if (v == 0)
                continue;
            string key = sources[k].Component;
            groups[key] = groups.TryGetValue(key, out var g) ? (g.First, g.Variance + v) : (sources[k], v);
        }
        return groups.Values;
    }
}
