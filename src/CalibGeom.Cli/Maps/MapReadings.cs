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
        findings = [.. files.Findings, .. found.Assumed is { } assumed ? [assumed] : Array.Empty<Finding>()];
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
        found.Object.Coupon(label)
        ?? throw new InputException(
            InputIds.Option,
            $"Nothing is known of where {(label.Length > 0 ? "coupon " + label : "the coupon without a label")} stood. Name the object file that \"calibgeom place\" left beside the plate: {ObjectOption.Name} FILE."
        );
}
