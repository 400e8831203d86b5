using CalibGeom.Verification.Clearances;

namespace CalibGeom.Cli.Predict;

/// <summary>The answer of <c>predict</c> for one coupon.</summary>
internal sealed record PredictAnswer(
    string Coupon,
    ClearancePrediction Prediction,
    OwnJoint? Own,
    IsoJoint? Iso,
    IReadOnlyList<Finding> Findings
);
