using System.Globalization;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>Plays rows of the league and says what came of them.</summary>
internal static class LeagueTable
{
    internal const double GrowthTolerance = 0.006,
        ColumnStep = 1.122;

    internal static readonly (string Name, Func<LeaguePrinter, Played> Play)[] Players =
    [
        ("tune", Policies.Tune),
        ("hand rule", Policies.HandRule),
        ("secant", Policies.Secant),
        ("offset only", Policies.OffsetOnly),
        ("Gaussian process", GaussianProcessPolicy.Play),
    ];

    internal static LeagueResult[] Play(
        LeagueRow row,
        Func<LeaguePrinter, Played> player,
        ulong firstSeed,
        int printers
    ) => [.. Enumerable.Range(0, printers).Select(i => Judge(new LeaguePrinter(row, firstSeed + (ulong)i), player))];

    internal static LeagueResult Judge(LeaguePrinter printer, Func<LeaguePrinter, Played> player)
    {
        double startLayers = printer.Layers(printer.Start.Time);
        Played played = player(printer);
        // Of the light that is left: none reaches settings of a light that has gone.
        double best = printer.BestTime(),
            bestLimit = printer.ColumnLimit(best),
            bestLost = printer.LostColumns(best);
        ColumnsAt kept = new(printer.ColumnLimit(played.Kept.Time), printer.LostColumns(played.Kept.Time));
        return new LeagueResult(
            printer.Growth(played.Kept.Time, played.Kept.Rest)
                + printer.Offset(played.Kept.EdgeOffset)
                - printer.TargetGrowth,
            kept.Limit / bestLimit,
            kept.Lost - bestLost,
            printer.Layers(played.Kept.Time),
            startLayers,
            played
        );
    }

    internal static string Percent(IReadOnlyCollection<LeagueResult> results, Func<LeagueResult, bool> of) =>
        (100.0 * results.Count(of) / results.Count).ToString("0.0", CultureInfo.InvariantCulture);

    private readonly record struct ColumnsAt(double Limit, double Lost);
}
