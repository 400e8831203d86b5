using System.Globalization;
using static CalibGeom.Verification.Tests.Tuning.League.LeagueTable;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>One row of the league, played by all, as the two tables of docs/tune.md have it.</summary>
internal sealed class LeagueReport
{
    private readonly int frontier;

    internal LeagueReport(LeagueRow row, ulong firstSeed, int printers)
    {
        Row = row;
        Of = Players.ToDictionary(p => p.Name, p => Play(row, p.Play, firstSeed, printers));
        frontier = row is { OffsetAllowed: true, Pixel: null }
            ? printers
            : Enumerable.Range(0, printers).Count(i => new LeaguePrinter(row, firstSeed + (ulong)i).CanHold());
    }

    internal LeagueRow Row { get; }

    /// <summary>What became of every printer, by player.</summary>
    internal IReadOnlyDictionary<string, LeagueResult[]> Of { get; }

    internal LeagueResult[] Tune => Of["tune"];

    /// <summary>Growth and columns, and growth alone, of every player.</summary>
    internal string Targets()
    {
        IEnumerable<string> cells = Of.Values.Select(r => $"{Percent(r, x => x.Good)} / {Percent(r, x => x.OnGrowth)}");
        return $"| {Row.Name} | {string.Join(" | ", cells)} |";
    }

    /// <summary>Strength, prints and coverage.</summary>
    internal string Rest()
    {
        int[] prints = [.. Tune.Select(r => r.Played.PrintsToStop).Order()];
        string[] cells =
        [
            Each(["tune", "offset only", "secant"], r => r.Sound),
            Each(["tune", "offset only", "secant"], r => r.LostMore <= 1),
            $"{prints[prints.Length / 2]}",
            Percent(Tune, r => r.Played.PrintsToStop <= 6),
            Percent(Tune, r => r.Played.Held!.Growth),
            Percent(Tune, r => r.Played.Held!.PrintThrough),
            Percent(Tune, r => r.Played.Held!.ColumnLimit),
            frontier == Tune.Length
                ? "all"
                : (100.0 * frontier / Tune.Length).ToString("0.0", CultureInfo.InvariantCulture),
        ];
        return $"| {Row.Name} | {string.Join(" | ", cells)} |";
    }

    private string Each(string[] players, Func<LeagueResult, bool> of) =>
        string.Join(" / ", players.Select(p => Percent(Of[p], of)));
}
