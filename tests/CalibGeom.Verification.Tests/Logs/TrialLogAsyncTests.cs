using System.Text;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests.Logs;

/// <summary>Logs that are read and appended to without a thread that waits.</summary>
public sealed class TrialLogAsyncTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private string Log => folder["log.jsonl"];

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task ALogComesFromAStreamThatIsOnlyReadAsynchronously()
    {
        TrialLog.Append(Log, Print(2));
        TrialLog.Append(Log, Print(2.4));
        using var stream = new AsyncOnlyStream(await File.ReadAllBytesAsync(Log));
        TrialLog read = await TrialLog.ReadAsync(stream, "log");
        Assert.Equal([2, 2.4], read.Trials.Select(t => t.Settings.Time));
    }

    [Fact]
    public async Task WhatIsAddedAsynchronouslyIsTheSameBytes()
    {
        string other = folder["other.jsonl"];
        for (int i = 0; i < 3; i++)
        {
            TrialLog.Append(other, Print(2 + i));
            LogEntry added = await TrialLog.AppendAsync(Log, log => Print(2 + log.Entries.Count));
            Assert.Equal(i + 1, added.Number);
        }
        Assert.Equal(await File.ReadAllBytesAsync(other), await File.ReadAllBytesAsync(Log));
    }

    [Fact]
    public async Task EveryoneWhoAddsAtOnceSeesWhatTheOthersAdded()
    {
        await Task.WhenAll(
            Enumerable.Range(0, 4).Select(_ => TrialLog.AppendAsync(Log, log => Print(1 + log.Entries.Count)))
        );
        Assert.Equal(
            Enumerable.Range(1, 4).Select(n => (double)n),
            TrialLog.Read(Log).Trials.Select(t => t.Settings.Time)
        );
    }

    [Fact]
    public async Task ALineThatWasCutOffIsEndedFirst()
    {
        await File.WriteAllTextAsync(Log, TrialLog.ToLine(Print(2)) + "\n{\"time\":");
        await TrialLog.AppendAsync(Log, _ => Print(3));
        TrialLog read = TrialLog.Read(Log);
        Assert.Equal([2, 3], read.Trials.Select(t => t.Settings.Time));
        Assert.Equal("log-torn", Assert.Single(read.Findings).Rule);
    }

    [Fact]
    public async Task WhatIsStoppedOrRefusedLeavesTheLogAsItWas()
    {
        TrialLog.Append(Log, Print(2));
        byte[] before = await File.ReadAllBytesAsync(Log);
        using var stop = new CancellationTokenSource();
        await Assert.ThrowsAsync<InputException>(() =>
            TrialLog.AppendAsync(Log, _ => throw new InputException("not this one"))
        );
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            TrialLog.AppendAsync(Log, _ => Print(3), stop.Token)
        );
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            TrialLog.AppendAsync(folder["new.jsonl"], _ => Print(3), stop.Token)
        );
        Assert.Equal(before, await File.ReadAllBytesAsync(Log));
        Assert.Equal([Log], Directory.GetFiles(folder.Root));
    }

    [Fact]
    public async Task WhatIsNoLogIsRefusedInTheSameWords()
    {
        byte[] bytes = Encoding.UTF8.GetBytes("not json\nat all\n");
        InputException expected = Assert.Throws<InputException>(() => TrialLog.Read(new MemoryStream(bytes), "log"));
        InputException told = await Assert.ThrowsAsync<InputException>(() =>
            TrialLog.ReadAsync(new AsyncOnlyStream(bytes), "log")
        );
        Assert.Equal(expected.Message, told.Message);
    }

    private static Trial Print(double time) =>
        new(new ExposureSettings(time, 1), new TrialConditions(0.05, "Demo grey", "bench"));
}
