namespace CalibGeom.Verification.Logs;

/// <summary>How many prints a number of trials are: coupons at several places of one plate are one.</summary>
internal static class PrintCount
{
    /// <summary>
    /// Coupons of one day whose places are known and differ are taken as one print; a place that comes twice was
    /// printed twice. What has no date or no place is a print of its own.
    /// </summary>
    internal static int Of(IEnumerable<Trial> trials) =>
        trials
            .GroupBy(t => t.Date is not null && t.Place is not null ? t.Date : null)
            .Sum(day => day.Key is null ? day.Count() : day.GroupBy(t => (t.Place!.X, t.Place.Y)).Max(p => p.Count()));
}
