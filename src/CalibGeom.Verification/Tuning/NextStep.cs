using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;

namespace CalibGeom.Verification.Tuning;

/// <summary>The recommendation. Immutable.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Reason">Why.</param>
/// <param name="Settings">The settings to print with, or to keep.</param>
/// <param name="Keep">What to type should nothing more be printed: exposure and rest of the last trial, with the offset
/// that puts them on target.</param>
/// <param name="GoalTime">The exposure in s that is aimed at, were steps not bounded.</param>
/// <param name="GoalRest">The rest in s from which a further second gains too little.</param>
public sealed record NextStep(
    NextKind Kind,
    Reason Reason,
    ExposureSettings Settings,
    ExposureSettings Keep,
    double GoalTime,
    double GoalRest
)
{
    /// <summary>The same, with a print at the last settings before anything is called settled.</summary>
    internal NextStep Doubted(ExposureSettings last) =>
        this with
        {
            Kind = NextKind.Confirm,
            Reason = Reason.Doubt,
            Settings = last,
        };
}
