using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;

namespace CalibGeom.Verification.Tuning;

/// <summary>What the trials say and what to do next. Immutable.</summary>
public sealed record TuningResult
{
    /// <summary>The conditions it speaks of, those of the last trial.</summary>
    public required TrialConditions Conditions { get; init; }

    /// <summary>The trials used, in order.</summary>
    public required IReadOnlyList<Trial> Trials { get; init; }

    /// <summary>Trials kept apart: under other conditions, or of a state that has ended.</summary>
    public required IReadOnlyList<TrialApart> KeptApart { get; init; }

    /// <summary>
    /// Where the first of <see cref="Trials"/> differs beyond chance from prints under the same conditions before it,
    /// so that their state has ended: the probability of so different a print by chance. Null where it does not.
    /// </summary>
    public double? Moved { get; init; }

    /// <summary>The growth that puts the clearance on target, mm.</summary>
    public required double TargetGrowth { get; init; }

    /// <summary>How growth answers to exposure and rest.</summary>
    public required ExposureResponse Response { get; init; }

    /// <summary>The columns, or null.</summary>
    public required ColumnSurvival? Columns { get; init; }

    /// <summary>Print-through by comb, bridge or a quoted curve, or null.</summary>
    public required PrintThroughResponse? PrintThrough { get; init; }

    /// <summary>The verdict on the clearance of the last settings.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The probabilities behind it.</summary>
    public required ClearanceChances Chances { get; init; }

    /// <summary>Every joint and axis at the settings of the last trial.</summary>
    public required IReadOnlyList<JointChance> Clearances { get; init; }

    /// <summary>The curve that holds the clearance on target, from no rest to the longest.</summary>
    public required IReadOnlyList<CurvePoint> Curve { get; init; }

    /// <summary>The recommendation.</summary>
    public required NextStep Next { get; init; }

    /// <summary>
    /// The answer in plain words: the order with its reason, the verdict, then what else the trials show.
    /// </summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>What was asked for.</summary>
    public required TuneOptions Options { get; init; }

    /// <summary>What the prints say of the scale along X, or null when none was read.</summary>
    public ScaleAdvice? ScaleX => ScaleAdvice.Of(Trials, t => t.ScaleX, s => s.X);

    /// <summary>The same along Y.</summary>
    public ScaleAdvice? ScaleY => ScaleAdvice.Of(Trials, t => t.ScaleY, s => s.Y);

    /// <summary>All numbers to type for the recommendation.</summary>
    public SettingsToType ToType =>
        SettingsToType.Of(Trials[^1], Next.Settings, Options) with
        {
            ScaleX = ScaleX?.ToType ?? Trials[^1].Scale.X,
            ScaleY = ScaleY?.ToType ?? Trials[^1].Scale.Y,
        };
}
