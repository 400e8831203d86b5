using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>What is told of a long log's prints.</summary>
public class HistoryTests
{
    [Fact]
    public void AdviceIsToldOfTheNewestPrintsAndIsThatOfTheLogThen()
    {
        Trial[] trials =
        [
            .. Enumerable
                .Range(0, Tuner.MostAdvised + 2)
                .Select(i => Make.Trial(2 + 0.1 * (i % 3), 1, 0.012 + 0.0004 * (i % 3) + 0.0001 * (i * 7 % 5))),
        ];
        TuningResult now = Tuner.Run(trials);
        IReadOnlyList<TrialRow> rows = Tuner.History(now);
        Assert.Equal(trials.Length, now.Trials.Count);
        Assert.Equal(trials.Length, rows.Count);
        Assert.All(rows.Take(2), row => Assert.Null(row.Advised));
        Assert.All(rows.Skip(2), row => Assert.NotNull(row.Advised));
        Assert.Equal(now.Next.Settings, rows[^1].Advised!.Settings);
        Assert.Equal(Tuner.Run(trials[..10]).Next.Settings, rows[9].Advised!.Settings);
    }
}
