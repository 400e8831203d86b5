using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>What is to be said of counts.</summary>
internal static class CountFindings
{
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
