using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>A fit that was felt, and the clearances it speaks of.</summary>
internal sealed record FeltWord(FeatureId Joint, int Print, IReadOnlyList<int> Quantities, FeltFit Fit);
