using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>The recommendation.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Settings">The settings to print with, or to keep.</param>
/// <param name="GoalTime">The exposure in s that holds the target at the recommended rest, were steps not
/// bounded.</param>
/// <param name="GoalRest">The rest in s from which a further second gains too little.</param>
/// <param name="Keep">The settings of the last trial with the edge offset that puts them on target, should no other
/// exposure or rest be tried.</param>
public sealed record NextStep(
    NextKind Kind,
    ExposureSettings Settings,
    double GoalTime,
    double GoalRest,
    ExposureSettings Keep
);
