using System.Text;
using CalibGeom.Verification.Logs;
using FsCheck;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Logs;

/// <summary>A log under bad disks and bad bytes: nothing torn, nothing endless, no two resins taken for one.</summary>
public sealed class TrialLogFaultTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 3, 1);

    private readonly string folder = Directory.CreateTempSubdirectory("calibgeom-").FullName;

    private string Log => Path.Combine(folder, "log.jsonl");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Property]
    public void AddAndUndoLeaveTheTrialsAsTheyWere(PositiveInt[] prints, bool last)
    {
        File.Delete(Log);
        foreach (PositiveInt print in prints)
            TrialLog.Append(Log, Of(1 + print.Get % 500 / 100.0, "Demo grey"));
        string[] before = prints.Length == 0 ? [] : Lines();
        int number = TrialLog.Append(Log, Of(7, "Demo grey")).Number;
        TrialLog.Undo(Log, Day, last ? null : number);
        Assert.Equal(before, Lines());
    }

    [Theory]
    [InlineData("Latin1")]
    [InlineData("utf-16")]
    public void ALogInAnotherEncodingIsRefused(string encoding)
    {
        string text = TrialLog.ToLine(Of(2.5, "Demo grün")) + "\n" + TrialLog.ToLine(Of(2.5, "Demo grôn")) + "\n";
        File.WriteAllText(Log, text, encoding == "Latin1" ? Encoding.Latin1 : Encoding.Unicode);
        Assert.Throws<InputException>(() => TrialLog.Read(Log));
        File.WriteAllText(Log, text, new UTF8Encoding(true));
        Assert.Equal(["Demo grün", "Demo grôn"], TrialLog.Read(Log).Trials.Select(t => t.Conditions.Resin));
    }

    [Fact]
    public void ALineCutWithinALetterIsLeftOutAndSaid()
    {
        byte[] whole = Encoding.UTF8.GetBytes(TrialLog.ToLine(Of(2.5, "Demo grün")));
        int letter = Array.IndexOf(whole, (byte)0xC3);
        File.WriteAllBytes(Log, [.. whole, (byte)'\n', .. whole[..(letter + 1)]]);
        TrialLog log = TrialLog.Read(Log);
        Assert.Single(log.Trials);
        Assert.Equal("log-torn", Assert.Single(log.Findings).Rule);
        TrialLog.Append(Log, Of(2.7, "Demo grün"));
        Assert.Equal([2.5, 2.7], TrialLog.Read(Log).Trials.Select(t => t.Settings.Time));
    }

    [Theory]
    [InlineData("{\"time\":2.5,\"time\":3,\"layer\":0.05}")]
    [InlineData("{\"time\":2.5,\"layer\":0.05,\"resin\":\"\\ud800\"}")]
    [InlineData("{\"time\":2.5,\"layer\":0.05,\"resin\":null}")]
    [InlineData("{\"time\":2.5,\"layer\":0.05,\"joints\":[null]}")]
    [InlineData("{\"time\":2.5,\"layer\":0.05,\"columns\":[null]}")]
    [InlineData("{\"time\":2.5,\"layer\":0.05,\"joints\":[{\"id\":null,\"designed\":0.05}]}")]
    [InlineData("{\"time\":2.5,\"layer\":0.05,\"readings\":{\"box1.outside.x\":null}}")]
    [InlineData("{\"time\":2.5,\"layer\":0.05,\"slots\":{\"heights\":null,\"open\":1}}")]
    [InlineData("{\"undo\":1,\"undo\":1}")]
    [InlineData("{\"\\ud800\":1}")]
    [InlineData("null")]
    [InlineData("[]")]
    public void ABadLineIsRefusedInWords(string line)
    {
        InputException e = Assert.Throws<InputException>(() => LogText.Read(line, "log.jsonl"));
        Assert.StartsWith("log.jsonl:1", e.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", e.Message, StringComparison.Ordinal);
    }

    /// <summary>What is piped in is held to the same as a file.</summary>
    [Fact]
    public void AStreamInAnotherEncodingIsRefusedAndAMarkAtItsBeginningIsNot()
    {
        string text = TrialLog.ToLine(Of(2.5, "Demo grün")) + "\r\n" + TrialLog.ToLine(Of(2.7, "Demo grün"));
        using var latin = new MemoryStream(Encoding.Latin1.GetBytes(text));
        Assert.Contains(
            "my.jsonl:1: a log is UTF-8 text",
            Assert.Throws<InputException>(() => TrialLog.Read(latin, "my.jsonl")).Message,
            StringComparison.Ordinal
        );
        using var marked = new MemoryStream([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)]);
        Assert.Equal([2.5, 2.7], TrialLog.Read(marked).Trials.Select(t => t.Settings.Time));
    }

    [Fact]
    public void APipeThatIsSlowIsReadToItsEnd()
    {
        string text = TrialLog.ToLine(Of(2.5, "Demo grün")) + "\n" + TrialLog.ToLine(Of(2.7, "Demo grün")) + "\n";
        using var slow = new SlowStream(Encoding.UTF8.GetBytes(text));
        Assert.Equal([2.5, 2.7], TrialLog.Read(slow).Trials.Select(t => t.Settings.Time));
    }

    [Fact]
    public void AnEndlessLineIsRefusedBeforeItIsRead()
    {
        using var endless = new EndlessStream();
        InputException e = Assert.Throws<InputException>(() => TrialLog.Read(endless, "log.jsonl"));
        Assert.Contains("longer than", e.Message, StringComparison.Ordinal);
    }

    private string[] Lines() => [.. TrialLog.Read(Log).Trials.Select(TrialLog.ToLine)];

    private static Trial Of(double time, string resin) =>
        new(new ExposureSettings(time, 1), new TrialConditions(0.05, resin, "bench"))
        {
            Readings = new Dictionary<string, IReadOnlyList<double>> { ["box1.outside.x"] = [8.02] },
        };

    /// <summary>A pipe whose writer takes its time: a byte at a time.</summary>
    private sealed class SlowStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override int Read(Span<byte> buffer) => base.Read(buffer[..Math.Min(1, buffer.Length)]);

        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(1, count));
    }

    /// <summary>A line that never ends.</summary>
    private sealed class EndlessStream : MemoryStream
    {
        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override int Read(Span<byte> buffer)
        {
            buffer.Fill((byte)'x');
            return buffer.Length;
        }
    }
}
