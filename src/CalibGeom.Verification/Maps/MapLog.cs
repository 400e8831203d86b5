using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Maps;

/// <summary>From prints in a log to the coupons of one print.</summary>
public static class MapLog
{
    /// <summary>
    /// The coupons of the newest print that has places: lines of one day, with the same settings and conditions, each
    /// at a place of its own.
    /// </summary>
    /// <param name="entries">The log; what was taken back is left out.</param>
    /// <exception cref="InputException">No line has a place.</exception>
    public static IReadOnlyList<MapPoint> Newest(IEnumerable<LogEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        LogEntry[] placed = entries.Where(e => !e.TakenBack && e.Trial.Place is not null).ToArray();
        if (placed.Length == 0)
            throw new InputException(
                InputIds.Question,
                "No print of this log has a place on the plate. Add the coupons of a plate one by one, with their places."
            );
        Trial last = placed[^1].Trial;
        var print = new List<Trial>();
        foreach (LogEntry entry in placed.Reverse())
        {
            Trial t = entry.Trial;
            bool same =
                t.Date == last.Date
                && t.Settings == last.Settings
                && t.Conditions.DifferencesFrom(last.Conditions).Count == 0
                && print.All(p => p.Place!.X != t.Place!.X || p.Place.Y != t.Place.Y);
            if (!same)
                break;
            print.Insert(0, t);
        }
        return Points(print);
    }

    /// <summary>Coupons with their places.</summary>
    /// <param name="trials">The coupons of one print, each with a place.</param>
    /// <exception cref="ArgumentException">One has no place.</exception>
    /// <exception cref="InputException">A thickness of a plinth or a bridge is none.</exception>
    public static IReadOnlyList<MapPoint> Points(IEnumerable<Trial> trials)
    {
        ArgumentNullException.ThrowIfNull(trials);
        return trials.Select(Point).ToArray();
    }

    /// <summary>Readings of the coupons of one print that were set aside, each under its coupon.</summary>
    /// <param name="table">What was designed, of all coupons.</param>
    /// <param name="readings">What was read, of any number of coupons.</param>
    /// <exception cref="InputException">A reading belongs to no feature.</exception>
    public static IReadOnlyList<Finding> Check(FeatureTable table, ReadingSet readings)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(readings);
        return readings.Coupons.SelectMany(label => TrialReadings.LeftOut(table, readings.ForCoupon(label))).ToArray();
    }

    private static MapPoint Point(Trial trial, int index)
    {
        PlateSpot place =
            trial.Place ?? throw new ArgumentException($"Coupon {index + 1} has no place.", nameof(trial));
        // Coupons of one print share caliper and process; what differs in their labels does not matter here. Growth is
        // taken with the edge offset of the print, which a joint printed so has too.
        var printed = new Trial(new ExposureSettings(trial.Settings.Time, trial.Settings.Rest), trial.Conditions)
        {
            Instrument = trial.Instrument,
            GrowthX = trial.GrowthX,
            GrowthY = trial.GrowthY,
            Joints = trial.Joints,
            Columns = trial.Columns,
            Slots = trial.Slots,
            Readings = trial.Readings,
            Nominals = trial.Nominals,
        };
        string name = place.Label.Length > 0 ? place.Label : FormattableString.Invariant($"coupon {index + 1}");
        double[] thickness = ThicknessReadings.Of(trial, KnownFeatures.PlinthThickness, $"Coupon {name}");
        // Asked for by the coupon's name here; the values below know of none.
        _ = ThicknessReadings.Of(trial, KnownFeatures.BridgeThickness, $"Coupon {name}");
        return new MapPoint(name, place.X, place.Y, CouponValues.Of(printed, out _))
        {
            Thickness = thickness.Length > 0 ? thickness.Average() : null,
            ThicknessUncertainty = 0.010 / Math.Sqrt(Math.Max(1, thickness.Length)),
        };
    }
}
