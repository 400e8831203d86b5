using CalibGeom.Verification.Logs;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>Which clearance the design should have, when the settings cannot give the one that is wanted.</summary>
internal static class DesignWords
{
    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        Trial last = result.Trials[^1];
        double left = 2 * (result.Response.At(result.Next.Settings).Mean - result.TargetGrowth);
        if (
            result.Verdict == Policy.Verdict.NotKnown
            || result.Next.Kind == NextKind.Change
            || last.Joints.Count == 0
            || Math.Abs(left) < result.Options.Tolerance
        )
            yield break;
        double designed = last.Joints[0].Designed;
        string side = left > 0 ? "below what is wanted" : "above what is wanted",
            wanted = Text($"{designed + left:0.000} mm instead of {designed:0.000}");
        yield return Note(
            "design",
            Text($"With what may be set the clearance stays {Math.Abs(left):0.000} mm {side}: design {wanted} mm."),
            "",
            last.Joints[0].Id
        );
    }
}
