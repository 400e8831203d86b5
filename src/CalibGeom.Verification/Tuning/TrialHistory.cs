using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>The prints of the log beside what was made of them.</summary>
internal static class TrialHistory
{
    internal static IReadOnlyList<TrialRow> Of(
        TuningResult now,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        var rows = new List<TrialRow>();
        for (int i = 0; i < now.Trials.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            NextStep? advised =
                i == now.Trials.Count - 1 ? now.Next
                : i < now.Trials.Count - Tuner.MostAdvised ? null
                : Answer.To([.. now.Trials.Take(i + 1)], now.Options, cancellation).Next;
            rows.Add(Row(now.Trials[i], i, advised, now));
            progress?.Report((i + 1.0) / now.Trials.Count);
        }
        return rows;
    }

    private static TrialRow Row(Trial trial, int index, NextStep? advised, TuningResult now)
    {
        JointOutcome? joint = trial.Joints.Count > 0 ? trial.Joints[0] : null;
        double? growth =
            trial.GrowthX is { } x && trial.GrowthY is { } y
                ? (x.Value + y.Value) / 2
                : (trial.GrowthX ?? trial.GrowthY)?.Value;
        double? designed = (joint?.Designed + joint?.DesignedY) / 2;
        return new TrialRow
        {
            Number = index + 1,
            Settings = trial.Settings,
            Measured = designed - 2 * growth,
            Believed =
                now.Verdict == Policy.Verdict.NotKnown ? null : designed - 2 * now.Response.At(trial.Settings).Mean,
            Felt = [.. trial.Joints.Select(j => j.Fit).OfType<Readings.FeltFit>()],
            Columns =
                trial.Columns.Count == 0 ? null : new Counted(trial.Columns.Count(c => c.Printed), trial.Columns.Count),
            Slots = trial.Slots is { } slots ? new Counted(slots.Open, slots.Heights.Count) : null,
            Advised = advised,
        };
    }
}
