using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Words;

namespace CalibGeom.Verification.Tuning;

/// <summary>From trials to the next settings.</summary>
public static class Tuner
{
    /// <summary>
    /// Of how many prints, the newest, <see cref="History"/> tells what was advised after them: 30. Each takes an answer
    /// of its own.
    /// </summary>
    public const int MostAdvised = 30;

    /// <summary>Learns from the trials under the conditions of the last one and says what to do next.</summary>
    /// <param name="trials">All trials in the order they were printed, at least one.</param>
    /// <param name="options">What is wanted; defaults when null.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">There is no trial.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static TuningResult Run(
        IReadOnlyList<Trial> trials,
        TuneOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(trials);
        options ??= TuneOptions.Default;
        if (trials.Count == 0)
            throw new ArgumentException("There is no trial to learn from.", nameof(trials));
        cancellation.ThrowIfCancellationRequested();
        options = options with { Pixel = options.Pixel ?? trials[^1].Pixel };
        TrialConditions conditions = trials[^1].Conditions;
        TrialApart[] apart =
        [
            .. trials
                .Select((t, i) => new TrialApart(i + 1, t, t.Conditions.DifferencesFrom(conditions)))
                .Where(a => a.Differences.Count > 0),
        ];
        Trial[] alike = [.. trials.Where(t => t.Conditions.DifferencesFrom(conditions).Count == 0)];
        NewestState state = NewestState.Of(alike, options, cancellation);
        Told(0.3);
        Trial[] used = state.Of(alike);
        Answer now = Answer.To(used, options, cancellation);
        // Fitted here, where it can be stopped and is told of; the words ask for its intervals.
        _ = (now.Columns?.ToCome(cancellation), now.Light?.ToCome(cancellation));
        Told(0.8);
        var result = new TuningResult
        {
            Conditions = conditions,
            Trials = used,
            KeptApart = [.. apart, .. state.Apart(trials, alike)],
            Moved = state.From > 0 ? state.Chance : null,
            TargetGrowth = now.Target,
            Response = now.Response,
            Columns = now.Columns,
            PrintThrough = now.Light,
            Verdict = now.Verdict,
            Chances = now.Chances,
            Clearances = JointChance.Of(used[^1], used[^1].Settings, now.Response, now.Target, options.Tolerance),
            Next = state.Next(now, used),
            Curve = TuningCurve.Of(used[^1], now, options),
            Findings = [],
            Options = options,
        };
        Told(0.9);
        result = result with { Findings = TuningWords.Of(result) };
        progress?.Report(1);
        return result;

        void Told(double share)
        {
            progress?.Report(share);
            cancellation.ThrowIfCancellationRequested();
        }
    }

    /// <summary>
    /// The prints used beside what was made of them; what was advised after each of the newest
    /// <see cref="MostAdvised"/> is worked out anew.
    /// </summary>
    /// <param name="result">What the trials say.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static IReadOnlyList<TrialRow> History(
        TuningResult result,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(result);
        return TrialHistory.Of(result, progress, cancellation);
    }

    /// <summary>
    /// Only the recommendation, without curve, history and words; all trials must be under the same conditions.
    /// </summary>
    internal static NextStep Next(IReadOnlyList<Trial> trials, TuneOptions options)
    {
        NewestState state = NewestState.Of(trials, options);
        Trial[] used = state.Of([.. trials]);
        return state.Next(Answer.To(used, options), used);
    }

    /// <summary>The clearance to expect in every joint and axis at some settings.</summary>
    /// <param name="result">What the trials say.</param>
    /// <param name="settings">The settings.</param>
    public static IReadOnlyList<JointChance> ChancesAt(TuningResult result, ExposureSettings settings)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(settings);
        return JointChance.Of(
            result.Trials[^1],
            settings,
            result.Response,
            result.TargetGrowth,
            result.Options.Tolerance
        );
    }
}
