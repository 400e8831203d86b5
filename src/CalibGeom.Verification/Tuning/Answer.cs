using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;

namespace CalibGeom.Verification.Tuning;

/// <summary>What trials under the same conditions say, before it is put in words.</summary>
/// <param name="Target">The growth that puts the clearance on target, mm.</param>
/// <param name="Response">How growth answers.</param>
/// <param name="Columns">The columns, or null.</param>
/// <param name="Light">Print-through, or null.</param>
/// <param name="Chances">The clearance of the last settings beside its target.</param>
/// <param name="Verdict">The verdict on it.</param>
/// <param name="Next">The recommendation.</param>
internal sealed record Answer(
    double Target,
    ExposureResponse Response,
    ColumnSurvival? Columns,
    PrintThroughResponse? Light,
    ClearanceChances Chances,
    Verdict Verdict,
    NextStep Next
)
{
    internal static Answer To(IReadOnlyList<Trial> used, TuneOptions options, CancellationToken cancellation = default)
    {
        ExposureResponse response = ExposureResponse.Of(used, options.Priors, cancellation: cancellation);
        ColumnSurvival? columns = ColumnSurvival.Of(used, options.Priors, cancellation);
        PrintThroughResponse? light = PrintThroughResponse.Of(used, options.Priors, options.Quoted, cancellation);
        Trial last = used[^1];
        double target =
            options.Target is { } wanted && last.Joints.Count > 0 ? (last.Joints[0].Designed - wanted) / 2 : 0;
        ClearanceChances chances = response.ChancesAt(
            last.Settings,
            target - options.Tolerance / 2,
            target + options.Tolerance / 2
        );
        return new Answer(
            target,
            response,
            columns,
            light,
            chances,
            VerdictOf(used, chances, options.Probability),
            new Planner(used, response, columns, light, target, options).Next()
        );
    }

    private static Verdict VerdictOf(IReadOnlyList<Trial> used, ClearanceChances chances, double probability) =>
        !Planner.SpeaksOfGrowth(used) ? Verdict.NotKnown
        : chances.OnTarget >= probability ? Verdict.OnTarget
        : chances.Tight >= probability ? Verdict.Tight
        : chances.Loose >= probability ? Verdict.Loose
        : Verdict.CannotBeToldYet;
}
