using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Trends.Changes;

namespace CalibGeom.Verification.Trends;

/// <summary>Where a calibrated state ends: the first print that is no longer the same process. Immutable.</summary>
/// <param name="Index">Its index in the list that was asked about.</param>
/// <param name="Probability">The probability of so different a print if nothing had changed.</param>
public sealed record StateEnd(int Index, double Probability)
{
    /// <summary>
    /// Looks for prints that must not be pooled with those before them. Prints of the same settings are compared; the
    /// process has changed from where the evidence of a change (see <see cref="Trend"/>) is enough, or where a single
    /// print differs from those before it with a probability below <paramref name="doubt"/>.
    /// </summary>
    /// <param name="trials">Prints under the same conditions, in order of time.</param>
    /// <param name="options">What counts as moved; null for the defaults.</param>
    /// <param name="doubt">A print less probable than this ends the state, 0 to 0.5. Default 0.01.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The start of the newest state, or null when all prints are of one state.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static StateEnd? Of(
        IReadOnlyList<Trial> trials,
        TrendOptions? options = null,
        double doubt = 0.01,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(trials);
        Require.Within(doubt, 0, 0.5, "doubt", "", nameof(doubt));
        options ??= TrendOptions.Default;
        StateEnd? end = null;
        foreach (
            var group in trials
                .Select((t, i) => (Trial: t, Index: i))
                .GroupBy(t => (t.Trial.Settings.Time, t.Trial.Settings.Rest))
        )
        {
            var members = group.ToArray();
            if (members.Length < 2)
                continue;
            var segment = new TrendSegment(members.Select(m => new LogEntry(m.Index + 1, m.Trial, false)).ToArray());
            if (Changed(segment.Points, options, doubt, cancellation) is not { } found)
                continue;
            int index = members[found.At].Index;
            if (end is null || index > end.Index)
                end = new StateEnd(index, found.Probability);
        }
        return end;
    }

    private static (int At, double Probability)? Changed(
        IReadOnlyList<TrendPoint> points,
        TrendOptions options,
        double doubt,
        CancellationToken cancellation
    )
    {
        var model = new ChangeModel(points, options with { Baseline = 1 }, cancellation);
        int last = points.Count - 1;
        double statistic = Math.Exp(Math.Min(600, model.LogStatistic(last, cancellation)));
        if (statistic > model.Limit(last))
        {
            var reader = new ChangeReader(model, options, last, cancellation);
            // What has moved by more than half of the change no longer speaks of the old state; a drift has no last
            // good print.
            int at = Enumerable.Range(1, last).First(n => n == last || reader.MovedBy(n) > 0.5 + 1e-9);
            return (at, Math.Min(1, 1 / statistic));
        }
        double probability = Trend.LastAlone(model, options);
        return probability < doubt ? (last, probability) : null;
    }
}
