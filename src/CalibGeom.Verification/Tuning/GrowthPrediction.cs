namespace CalibGeom.Verification.Tuning;

/// <summary>The growth to expect of the process at some settings, edge offset included.</summary>
/// <param name="Mean">Growth per edge, mean of X and Y, mm.</param>
/// <param name="Uncertainty">Its standard uncertainty (of the process, not of one print), mm.</param>
public readonly record struct GrowthPrediction(double Mean, double Uncertainty);
