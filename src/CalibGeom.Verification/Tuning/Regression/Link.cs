namespace CalibGeom.Verification.Tuning.Regression;

/// <summary>How a probability follows from a linear predictor.</summary>
internal enum Link
{
    /// <summary>p = 1 / (1 + exp(-eta)).</summary>
    Logit,

    /// <summary>p = Phi(eta).</summary>
    Probit,

    /// <summary>p = 1 - exp(-exp(eta)).</summary>
    ComplementaryLogLog,
}
