using MathNet.Numerics;

namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>The links as functions.</summary>
internal static class Links
{
    /// <summary>The probability and its complement, each to full relative precision.</summary>
    internal static (double P, double Q) Probability(Link link, double eta) =>
        link switch
        {
            Link.Logit => (1 / (1 + Math.Exp(-eta)), 1 / (1 + Math.Exp(eta))),
            Link.Probit => (
                SpecialFunctions.Erfc(-eta / Math.Sqrt(2)) / 2,
                SpecialFunctions.Erfc(eta / Math.Sqrt(2)) / 2
            ),
            _ => (-Math.Exp(-Math.Exp(eta)) + 1, Math.Exp(-Math.Exp(eta))),
        };

    /// <summary>The probability's derivative with respect to the linear predictor.</summary>
    internal static double Slope(Link link, double eta)
    {
        (double p, double q) = Probability(link, eta);
        return link switch
        {
            Link.Logit => p * q,
            Link.Probit => Math.Exp(-eta * eta / 2) / Math.Sqrt(2 * Math.PI),
            _ => Math.Exp(eta) * q,
        };
    }

    /// <summary>The linear predictor of a probability.</summary>
    internal static double Predictor(Link link, double p) =>
        link switch
        {
            Link.Logit => Math.Log(p / (1 - p)),
            Link.Probit => -Math.Sqrt(2) * SpecialFunctions.ErfcInv(2 * p),
            _ => Math.Log(-Math.Log(1 - p)),
        };
}
