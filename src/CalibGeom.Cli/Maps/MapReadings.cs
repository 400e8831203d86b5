using CalibGeom.Cli.Shared;
using CalibGeom.Objects;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Maps;

/// <summary>From the readings of one print, coupon by coupon, to a map, without a log.</summary>
internal static class MapReadings
{
    // A map compares coupons of one print: what was set is the same for all and does not enter.
    private static readonly ExposureSettings Alike = new(1, 0);
    private static readonly TrialConditions Same = new(ProcessDefaults.LayerHeight);

    internal static IReadOnlyList<MapPoint> Points(
        CommandIo io,
        IReadOnlyList<string> paths,
        Func<string?, FoundObject> find,
        out IReadOnlyList<Finding> findings
    )
    {
        var files = new ReadingFiles(io, paths);
        ReadingSet readings = files.Together();
        FoundObject found = find(readings.Digest);
        var places = readings.Coupons.Select(label => PlaceOf(found, label)).ToArray();
        if (places.Select(c => c.Exposure).Distinct().Count() > 1)
            throw new InputException(
                InputIds.Option,
                "The coupons of this plate were exposed differently: they tell exposures, not places. A map needs one exposure."
            );
        findings =
        [
            .. files.Findings,
            .. found.Assumed is { } assumed ? [assumed] : Array.Empty<Finding>(),
            .. MapLog.Check(found.Object.Features, readings),
            .. NotRead(found, readings),
        ];
        return MapLog.Points(
            readings.Coupons.Zip(
                places,
                (label, c) =>
                    TrialReadings.ToTrial(found.Object.Features, readings.ForCoupon(label), Alike, Same) with
                    {
                        Place = new PlateSpot(c.Label, c.X, c.Y, c.Turn),
                    }
            )
        );
    }

    private static ObjectCoupon PlaceOf(FoundObject found, string label) =>
        found.Object.Coupon(label) ?? throw new InputException(InputIds.Option, Unplaced(found, label));

    private static string Unplaced(FoundObject found, string label)
    {
        string[] placed = [.. (found.Object.File?.Coupons ?? []).Select(c => c.Label).Where(l => l.Length > 0)];
        if (placed.Length > 0)
            return $"The readings hold {(label.Length > 0 ? "coupon " + label : "lines without a coupon's label")}, but the coupons of {found.Object.Name} are {string.Join(", ", placed)}. Correct the label in the readings, or name the object file of their plate: {ObjectOption.Name} FILE.";
        return $"Nothing is known of where {(label.Length > 0 ? "coupon " + label : "the coupon without a label")} stood. Name the object file that \"calibgeom place\" left beside the plate: {ObjectOption.Name} FILE.";
    }

    private static IEnumerable<Finding> NotRead(FoundObject found, ReadingSet readings) =>
        (found.Object.File?.Coupons ?? [])
            .Where(c => !readings.Coupons.Contains(c.Label))
            .Select(c => new Finding(
                "coupon-not-read",
                Severity.Note,
                c.Label,
                FormattableString.Invariant(
                    $"It stands at X {c.X:0.##}, Y {c.Y:0.##} mm and has no readings; the light there is drawn from the others."
                ),
                "Measure it too: a coupon that is hard to read may stand where the light is weakest."
            ));
}
