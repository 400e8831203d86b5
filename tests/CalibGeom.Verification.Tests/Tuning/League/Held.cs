using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>Whether the 95 % intervals of what was told held the truth.</summary>
internal sealed record Held(bool Growth, bool PrintThrough, bool ColumnLimit)
{
    internal static Held Of(LeaguePrinter printer, IReadOnlyList<Trial> trials, ExposureSettings kept)
    {
        double growth = printer.Growth(kept.Time, kept.Rest) + kept.EdgeOffset;
        return new(
            ExposureResponse.Of(trials).IntervalAt(kept).Contains(growth),
            PrintThroughResponse.Of(trials)!.IntervalAt(kept.Time).Contains(printer.PrintThrough(kept.Time)),
            ColumnSurvival.Of(trials)!.LimitInterval(kept.Time).Contains(printer.ColumnLimit(kept.Time))
        );
    }
}
