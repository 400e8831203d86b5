namespace CalibGeom.Verification.Tuning;

/// <summary>One draw of what is believed of growth.</summary>
/// <param name="A">Growth at the reference exposure without rest, mm.</param>
/// <param name="B">Growth for a factor e of exposure, mm.</param>
/// <param name="C">Retreat after a long rest, mm.</param>
/// <param name="Tau">Time of that retreat, s.</param>
/// <param name="BetweenPrints">Standard deviation between prints, mm.</param>
/// <param name="Drift">Change of ln(light) from one print to the next.</param>
/// <param name="Latents">Biases, difference of axes, misfits and print deviations, see
/// <see cref="GrowthLatents"/>.</param>
internal sealed record GrowthSample(
    double A,
    double B,
    double C,
    double Tau,
    double BetweenPrints,
    double Drift,
    double[] Latents
)
{
    /// <summary>The formula, without misfit.</summary>
    internal double Growth(double logTime, double rest) => A + B * logTime - C * (1 - Math.Exp(-rest / Tau));

    /// <summary>What a further second of rest gains, mm.</summary>
    internal double RestGain(double rest) => C * Math.Exp(-rest / Tau) * (1 - Math.Exp(-1 / Tau));
}
