namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A quantity to predict: a constant plus a combination of coefficients and of realised errors (such as one face's own
/// deviation).
/// </summary>
internal sealed record LinearTarget(
    double Constant,
    double[] Coefficients,
    IReadOnlyList<(int Source, double Factor)> Realised
);
