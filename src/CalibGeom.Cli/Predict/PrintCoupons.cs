using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary>Coupons of prints: each is answered by itself.</summary>
internal static class PrintCoupons
{
    /// <summary>The coupons to answer, in turn.</summary>
    /// <exception cref="InputException">The wanted one has no readings.</exception>
    internal static IReadOnlyList<string> Coupons(IReadOnlyList<ReadingSet> prints, string? wanted)
    {
        string[] all = prints.SelectMany(p => p.Coupons).Distinct().Order(StringComparer.Ordinal).ToArray();
        if (wanted is null)
            return all.Length > 0 ? all : [""];
        ReadingFiles.RequireCoupon(all, wanted);
        return [wanted];
    }

    /// <summary>The prints that have readings of a coupon; all of them when there is but one.</summary>
    internal static IReadOnlyList<ReadingSet> Of(IReadOnlyList<ReadingSet> prints, string coupon) =>
        prints.Count == 1
            ? [prints[0].ForCoupon(coupon)]
            : prints.Where(p => p.Coupons.Contains(coupon)).Select(p => p.ForCoupon(coupon)).ToArray();
}
