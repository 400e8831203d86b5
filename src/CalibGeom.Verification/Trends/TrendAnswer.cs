using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Trends;

/// <summary>What a log says: one verdict, what follows, and the evidence. Immutable.</summary>
public sealed record TrendAnswer
{
    // Below this the gauges disagree about light, and no exposure is offered.
    private const double PureLight = 0.5;

    /// <summary>How probable it must be that a correction lands within the tolerance, to be offered: 0.9.</summary>
    public const double Lands = 0.9;

    // An exposure is read off a display to about this; a correction below it is none.
    private const double LeastCorrection = 0.02;

    /// <summary>The log in segments.</summary>
    public required TrendLog Log { get; init; }

    /// <summary>What the coupons of the last state say by themselves.</summary>
    public required TrendResult Result { get; init; }

    /// <summary>What calls for a new calibration without statistics.</summary>
    public required IReadOnlyList<TrendTrigger> Triggers { get; init; }

    /// <summary>The verdict, triggers included.</summary>
    public required TrendVerdict Verdict { get; init; }

    /// <summary>The exposure that makes up for lost light; null unless what moved is light, and the exposure lands
    /// within the tolerance with a probability of <see cref="Lands"/>.</summary>
    public LightCorrection? Correction { get; init; }

    /// <summary>The answer in plain words: first the verdict, then the evidence.</summary>
    public IReadOnlyList<Finding> Findings { get; private init; } = [];

    /// <summary>Judges a log.</summary>
    /// <param name="entries">Its prints.</param>
    /// <param name="options">What counts as moved; null for the defaults.</param>
    /// <param name="months">Months of frequent use after which a new calibration is called for; 0 for never. Default
    /// 6.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">There is no print, or all coupons of the last state are of one print.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static TrendAnswer Of(
        IEnumerable<LogEntry> entries,
        TrendOptions? options = null,
        double months = 6,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        TrendLog log = TrendLog.Of(entries);
        RequireSeveralPrints(log.Current);
        options ??= TrendOptions.Default;
        TrendResult result = Trend.Run(log.Current.Points, options, cancellation: cancellation);
        progress?.Report(0.5);
        cancellation.ThrowIfCancellationRequested();
        IReadOnlyList<TrendTrigger> triggers = log.Triggers(months);
        var answer = new TrendAnswer
        {
            Log = log,
            Result = result,
            Triggers = triggers,
            Verdict = triggers.Count > 0 ? TrendVerdict.Recalibrate : result.Verdict,
            Correction = CorrectionOf(log.Current.Entries[^1].Trial.Settings, result),
        };
        // The words ask how many more coupons would settle it, which is most of the work for a log that is not settled.
        result.CountMore(cancellation);
        answer = answer with { Findings = TrendWords.Of(answer) };
        progress?.Report(1);
        return answer;
    }

    private static void RequireSeveralPrints(TrendSegment current)
    {
        Trial[] coupons = [.. current.Entries.Select(e => e.Trial)];
        if (coupons.Length > 1 && coupons[0].Date is not null && PrintCount.Of(coupons) == 1)
            throw new InputException(
                InputIds.Question,
                FormattableString.Invariant(
                    $"The last {coupons.Length} coupons are of one print, at different places of the plate: they say nothing of time. Add a coupon of another day; how light differs over the plate is what map tells."
                )
            );
    }

    private static LightCorrection? CorrectionOf(ExposureSettings settings, TrendResult result)
    {
        if (result.Change is not { IsRatherChance: false } change || change.LightProbability < PureLight)
            return null;
        if (change.Correction is not { Probability: >= Lands } lost || Math.Abs(lost.LogLight) < LeastCorrection)
            return null;
        double Exposure(double logLight) => settings.Time * Math.Exp(-logLight);
        double time = Math.Round(Exposure(lost.LogLight), 2);
        if (time is <= 0 or > ExposureSettings.Longest)
            return null;
        return new LightCorrection(
            new ExposureSettings(time, settings.Rest, settings.EdgeOffset),
            Exposure(change.LogLight.High),
            Exposure(change.LogLight.Low),
            lost.Probability
        );
    }
}
