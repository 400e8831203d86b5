using System.Runtime.CompilerServices;

namespace CalibGeom.Verification.Trends;

/// <summary>What a segment of coupons says. Immutable.</summary>
public sealed record TrendResult
{
    private StrongBox<int?>? more;

    /// <summary>The coupons, in order of time.</summary>
    public required IReadOnlyList<TrendPoint> Points { get; init; }

    /// <summary>Whether times are days; else they count coupons.</summary>
    public required bool Dated { get; init; }

    /// <summary>The time of each coupon: days after the first, or its number from 0.</summary>
    public required IReadOnlyList<double> Times { get; init; }

    /// <summary>What the coupons say by themselves, before what the log says of film, resin and so on.</summary>
    public required TrendVerdict Verdict { get; init; }

    /// <summary>
    /// The evidence of a change after each coupon over what it takes to say so: above 1 it is said.
    /// </summary>
    public required IReadOnlyList<double> Evidence { get; init; }

    /// <summary>Whether what later coupons told speaks for a change, though not enough to say so.</summary>
    internal bool SeemsToMove { get; init; }

    /// <summary>The charts of each gauge that has points.</summary>
    public required IReadOnlyList<GaugeCharts> Charts { get; init; }

    /// <summary>
    /// What has changed; null unless the evidence speaks for a change. Where chance is as likely, <see cref="Verdict"/>
    /// asks for more data.
    /// </summary>
    public TrendChange? Change { get; init; }

    /// <summary>
    /// The smallest sudden loss of light half way through these coupons that would by now have been seen in 8 of 10
    /// cases, as a share 0 to 1; null when not even the loss of all would.
    /// </summary>
    public double? WouldBeSeen { get; init; }

    /// <summary>How many more coupons would settle it; 0 when settled, null when none of 60 would.</summary>
    public int? MoreCoupons => CountMore(CancellationToken.None);

    /// <summary>Counts them when they are first asked for.</summary>
    internal Func<CancellationToken, int?> More { get; init; } = _ => 0;

    internal int? CountMore(CancellationToken cancellation) => (more ??= new StrongBox<int?>(More(cancellation))).Value;

    /// <summary>What was asked for.</summary>
    public required TrendOptions Options { get; init; }

    /// <summary>A time of this segment as a day, or null when its coupons are not dated.</summary>
    /// <param name="time">In the unit of <see cref="Times"/>.</param>
    public DateOnly? DayOf(double time) =>
        Dated && Math.Abs(time) < 1e6 ? Points[0].Date!.Value.AddDays((int)Math.Round(time)) : null;
}
