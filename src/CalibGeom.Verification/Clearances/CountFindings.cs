using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>What is to be said of counts.</summary>
internal static class CountFindings
{
    /// <summary>Slots of the tab that are no higher than a tunnel of the comb that light has closed.</summary>
    internal static IEnumerable<Finding> AgainstTheComb(MatchedReadings matched, Bracket? comb)
    {
        if (
            comb is null
            || matched.CountOf(KnownFeatures.SqueezeOpen) is not { } open
            || matched.Table.Find(KnownFeatures.SqueezeOpen)?.Openings is not { Count: > 0 } slots
        )
            yield break;
        int lower = slots.Count(h => h <= comb.Low) - (slots.Count - open);
        if (lower > 0)
            yield return new Finding(
                "tab-against-comb",
                Severity.Warning,
                KnownFeatures.SqueezeOpen,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The comb's tunnel of {comb.Low:0.###} mm is closed, yet slots of the squeeze tab that are no higher count as open: {lower} of {open}."
                ),
                "Count both again, with a film or a wire of 0.1 mm: light closes in the tab what it closes in the comb."
            );
    }

    /// <summary>Print-through that comb and bridge bracket apart from each other.</summary>
    internal static IEnumerable<Finding> AgainstTheBridge(Bracket? comb, Bracket? bridge)
    {
        if (comb is null || bridge is null || (bridge.High >= comb.Low && bridge.Low <= comb.High))
            yield break;
        yield return new Finding(
            "bridge-against-comb",
            Severity.Warning,
            KnownFeatures.BridgeThickness,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The bridge is thicker than designed by {bridge.Low:0.00} to {bridge.High:0.00} mm; by the comb print-through is {Between(comb)}, which counts."
            ),
            "Read the bridge again between the posts, away from supports, and look whether uncured resin sits in the tunnels."
        );
    }

    private static string Between(Bracket b) =>
        double.IsFinite(b.High)
            ? string.Create(CultureInfo.InvariantCulture, $"{b.Low:0.00#} to {b.High:0.00#} mm")
            : string.Create(CultureInfo.InvariantCulture, $"over {b.Low:0.00#} mm");

    /// <summary>Counts of the same that differ: one of them is wrong, and no mean of them is true.</summary>
    internal static IEnumerable<Finding> Differing(MatchedReadings matched) =>
        matched
            .Others.Where(r => r.Kind == ReadingKind.Count)
            .GroupBy(r => r.Id)
            .Where(g => g.Select(r => r.Value).Distinct().Skip(1).Any())
            .OrderBy(g => g.Key)
            .Select(g => new Finding(
                "counts-differ",
                Severity.Warning,
                g.Key,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{g.Key} was counted as {string.Join(" and ", g.Select(r => r.Value).Distinct())}; {matched.CountOf(g.Key)} is taken."
                ),
                "Count again, and keep one line."
            ));

    /// <summary>A count of slots whose heights the table does not tell says nothing in mm; it is not guessed.</summary>
    internal static IEnumerable<Finding> Of(MatchedReadings matched) =>
        matched
            .Others.Where(r => r.Kind == ReadingKind.Count)
            .Select(r => r.Id)
            .Distinct()
            .Where(id => matched.Table.Find(id) is { Openings.Count: 0 })
            .Order()
            .Select(id => new Finding(
                "slot-heights-unknown",
                Severity.Note,
                id,
                $"{id} was counted, but the feature table does not tell the heights of what was counted; nothing follows "
                    + "from it.",
                "Use the feature table that was written beside the printed file."
            ));
}
