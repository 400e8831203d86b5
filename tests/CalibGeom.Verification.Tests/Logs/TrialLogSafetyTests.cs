using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Logs;

/// <summary>What a log must outlive: being cut off anywhere, two writers at once, words taken back.</summary>
public sealed class TrialLogSafetyTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 3, 1);

    private readonly string folder = Directory.CreateTempSubdirectory("calibgeom-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void ALogIsReadAfterAnyTruncationAndAddedToAfterwards()
    {
        string path = Path.Combine(folder, "log.jsonl");
        foreach (double time in new[] { 2, 2.25, 2.5 })
            TrialLog.Append(path, Of(time));
        TrialLog.Undo(path, Day, 2);
        byte[] whole = File.ReadAllBytes(path);
        for (int length = 0; length <= whole.Length; length++)
        {
            File.WriteAllBytes(path, whole[..length]);
            int ended = whole.AsSpan(0, length).Count((byte)'\n');
            bool atEnd = length == 0 || whole[length - 1] == '\n',
                unended = !atEnd && length < whole.Length && whole[length] == '\n';
            TrialLog log = TrialLog.Read(path);
            Assert.Equal(Math.Min(3, ended + (unended ? 1 : 0)), log.Entries.Count);
            Assert.Equal(atEnd || unended ? 0 : 1, log.Findings.Count);
            if (length % 7 != 0)
                continue;
            Assert.Equal(log.Entries.Count + 1, TrialLog.Append(path, Of(3)).Number);
            TrialLog after = TrialLog.Read(path);
            Assert.Equal(3, after.Trials[^1].Settings.Time);
            Assert.Equal(log.Findings.Count, after.Findings.Count);
        }
    }

    [Fact]
    public async Task WritersAtOnceLoseNothing()
    {
        string path = Path.Combine(folder, "log.jsonl");
        const int writers = 4,
            each = 12;
        Task[] all = Enumerable
            .Range(0, writers)
            .Select(w =>
                Task.Factory.StartNew(
                    () =>
                    {
                        for (int i = 0; i < each; i++)
                            TrialLog.Append(path, Of(1 + w + i / 100.0));
                    },
                    TaskCreationOptions.LongRunning
                )
            )
            .ToArray();
        await Task.WhenAll(all);
        double[] times = TrialLog.Read(path).Trials.Select(t => t.Settings.Time).Order().ToArray();
        double[] wanted = Enumerable
            .Range(0, writers)
            .SelectMany(w => Enumerable.Range(0, each).Select(i => 1 + w + i / 100.0))
            .ToArray();
        Assert.Equal(wanted, times);
    }

    [Fact]
    public void ATrialTakenBackKeepsItsLineAndNumber()
    {
        string path = Path.Combine(folder, "log.jsonl");
        TrialLog.Append(path, Of(2));
        TrialLog.Append(path, Of(2.2));
        string before = File.ReadAllText(path);
        Assert.Equal(1, TrialLog.Undo(path, Day, 1).Number);
        Assert.StartsWith(before, File.ReadAllText(path), StringComparison.Ordinal);
        TrialLog log = TrialLog.Read(path);
        Assert.Equal([(1, true), (2, false)], log.Entries.Select(e => (e.Number, e.TakenBack)));
        Assert.Equal([2.2], log.Trials.Select(t => t.Settings.Time));
        Assert.Equal(2, TrialLog.Undo(path, Day).Number);
        Assert.Throws<InputException>(() => TrialLog.Undo(path, Day));
        Assert.Throws<InputException>(() => TrialLog.Undo(path, Day, 1));
        Assert.Throws<InputException>(() => TrialLog.Undo(path, Day, 3));
        Assert.Throws<InputException>(() => TrialLog.Undo(Path.Combine(folder, "none"), Day));
        Assert.Equal(3, TrialLog.Append(path, Of(2.4)).Number);
    }

    [Fact]
    public void WhatCannotBeAddedLeavesNoFileBehind()
    {
        string path = Path.Combine(folder, "log.jsonl");
        Assert.Throws<InputException>(() => TrialLog.Append(path, _ => throw new InputException("no")));
        Assert.False(File.Exists(path));
    }

    [Fact]
    public void WhatIsNotSaidComesFromTheProcessThenFromTheLastTrial()
    {
        Trial last = Of(2.5) with { Cycle = new LayerCycle(8, 30, 9) };
        FilledEntry filled = EntryFiller.Fill(
            new TrialEntry { Time = 2.7 },
            new ProcessFacts(Layer: 0.03, BaseLayers: 4),
            PartState.Washed,
            last
        );
        Assert.Equal(new ExposureSettings(2.7, 1, 0.01), filled.Settings);
        Assert.Equal((4, 30, 9), (filled.Cycle.BaseLayers, filled.Cycle.BaseTime, filled.Cycle.Lift));
        Assert.Equal(
            (0.03, "Demo grey", PartState.Washed),
            (filled.Conditions.Layer, filled.Conditions.Resin, filled.Conditions.State)
        );
        Assert.Null(filled.Conditions.TemperatureStart);
        Assert.Equal(
            ["rest 1 s", "edge offset 0.01 mm", "base exposure 30 s", "lift 9 s", "resin Demo grey", "printer bench"],
            filled.Taken
        );
        Assert.Throws<InputException>(() =>
            EntryFiller.Fill(new TrialEntry { Time = 2 }, new ProcessFacts(), null, null)
        );
        Assert.Throws<InputException>(() =>
            EntryFiller.Fill(new TrialEntry { Time = -2, Rest = 0 }, new ProcessFacts(), null, null)
        );
    }

    [Theory]
    [InlineData(2.5, "Demo grey", "bench")]
    [InlineData(7.5, "Demo grey", "bench")]
    [InlineData(7.6, "Demo grey", "bench", "unlikely-setting")]
    [InlineData(0.83, "Demo grey", "bench", "unlikely-setting")]
    [InlineData(25, "demo  Grey", "bench", "unlikely-setting", "near-name")]
    [InlineData(2.5, "Demo gray", "bench", "near-name")]
    [InlineData(2.5, "Demo grey 2", "bench")]
    [InlineData(2.5, "Demo blue", "bench")]
    [InlineData(2.5, "", "bench")]
    [InlineData(2.5, "Demo grey", "Bench", "near-name")]
    public void SlipsAreAskedBack(double time, string resin, string printer, params string[] rules)
    {
        string path = Path.Combine(folder, "log.jsonl");
        TrialLog.Append(path, Of(2.5));
        Trial next = Of(time, resin, printer) with { Slots = null };
        Assert.Equal(rules, TrialDoubts.Check(next, TrialLog.Read(path)).Select(d => d.Rule));
    }

    [Fact]
    public void TheSameReadingsAreAskedBackUntilTheFirstAreTakenBack()
    {
        string path = Path.Combine(folder, "log.jsonl");
        TrialLog.Append(path, Of(2.5));
        Finding same = Assert.Single(TrialDoubts.Check(Of(2.6), TrialLog.Read(path)));
        Assert.Equal((TrialDoubts.SameReadings, "trial 1"), (same.Rule, same.Subject));
        Trial other = Of(2.5) with
        {
            Readings = new Dictionary<string, IReadOnlyList<double>> { ["box1.outside.x"] = [8.03] },
        };
        Assert.Empty(TrialDoubts.Check(other, TrialLog.Read(path)));
        TrialLog.Undo(path, Day);
        Assert.Empty(TrialDoubts.Check(Of(2.6), TrialLog.Read(path)));
    }

    private static Trial Of(double time, string resin = "Demo grey", string printer = "bench") =>
        new(new ExposureSettings(time, 1, 0.01), new TrialConditions(0.05, resin, printer, temperatureStart: 24))
        {
            Slots = new SlotOutcome([0.2, 0.3], 1),
            Readings = new Dictionary<string, IReadOnlyList<double>> { ["box1.outside.x"] = [8.02, 8.03] },
        };
}
