using CalibGeom.Verification.Uncertainty;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>Scale beside growth, where it differs from 1 beyond doubt.</summary>
internal static class ScaleWords
{
    internal static IEnumerable<Finding> Of(TuningResult result) =>
        new[] { (Axis: "X", Told: result.ScaleX), (Axis: "Y", Told: result.ScaleY) }
            .Where(a => a.Told is { Told: true })
            .Select(a => Of(a.Axis, a.Told!));

    private static Finding Of(string axis, ScaleAdvice scale) =>
        Note(
            "scale",
            Text(
                $"Beside growth all sizes along {axis} come out {100 * Math.Abs(scale.Change):0.00} +- {100 * Coverage.NormalFactor * scale.Uncertainty:0.00} % "
            ) + (scale.Change < 0 ? "too small." : "too large."),
            Text($"Scale {axis} of {100 * scale.ToType:0.00} % takes that up; clearances hardly notice.")
        ) with
        {
            Value = scale.Change,
            Limit = Coverage.NormalFactor * scale.Uncertainty,
        };
}
