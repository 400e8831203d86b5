using System.Diagnostics;
using System.Globalization;
using System.Reflection;

namespace CalibGeom.Light.Tests.Stopping;

/// <summary>
/// Long work stops when that is wanted, and tells how far it is. How soon it stops is measured by hand:
/// <c>CALIBGEOM_STOPPING=FILE dotnet test tests/CalibGeom.Light.Tests --filter Stopping</c> writes a table to a file;
/// what one run of it told stands in docs/web.md.
/// </summary>
public class StoppingTests
{
    public static TheoryData<string> Names => [.. LongOperations.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void WorkStopsAtTheFirstWordOfProgress(string name)
    {
        using var stop = new CancellationTokenSource();
        var heard = new Heard(_ => stop.Cancel());
        Action<IProgress<double>, CancellationToken> work = LongOperations.All[name](1);
        Assert.ThrowsAny<OperationCanceledException>(() => work(heard, stop.Token));
        // Threads at work may each finish what they have in hand.
        Assert.True(heard.Shares.Last() < 1, $"It went on to {heard.Shares.Last()}.");
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void WorkToldToStopBeforehandDoesNotBegin(string name)
    {
        Action<IProgress<double>, CancellationToken> work = LongOperations.All[name](1);
        Assert.ThrowsAny<OperationCanceledException>(() => work(new Heard(_ => { }), new CancellationToken(true)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ProgressRisesFromAboveZeroToTheWhole(string name)
    {
        var heard = new Heard(_ => { });
        LongOperations.All[name](1)(heard, CancellationToken.None);
        Assert.NotEmpty(heard.Shares);
        Assert.All(heard.Shares, s => Assert.InRange(s, 0, 1));
        Assert.Equal(heard.Shares.Order(), heard.Shares);
        Assert.InRange(heard.Shares[^1], 0.99, 1);
    }

    public static TheoryData<string> NamesWithoutProgress => [.. TokenOnlyOperations.All.Keys];

    [Theory]
    [MemberData(nameof(NamesWithoutProgress))]
    public async Task WorkWithoutProgressDoesNotBeginEitherWhenItIsToldToStop(string name) =>
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            TokenOnlyOperations.All[name](new CancellationToken(true))
        );

    [Fact]
    public void EverythingThatCanBeStoppedIsStoppedHere()
    {
        IEnumerable<string> methods = (
            (Assembly[])
                [
                    typeof(Finding).Assembly,
                    typeof(TestObjects.TestObject).Assembly,
                    typeof(LightDose).Assembly,
                    typeof(Verification.Logs.Trial).Assembly,
                    typeof(Testing.KnownPrint).Assembly,
                ]
        )
            .SelectMany(a => a.GetExportedTypes())
            .SelectMany(t => t.GetMembers().OfType<MethodBase>().Where(m => m.DeclaringType == t))
            .Where(m => m.GetParameters().Any(p => p.ParameterType == typeof(CancellationToken)))
            .Select(m => m.IsConstructor ? m.DeclaringType!.Name : $"{m.DeclaringType!.Name}.{m.Name}")
            .Distinct();
        string[] stopped = [.. LongOperations.All.Keys, .. TokenOnlyOperations.All.Keys];
        Assert.Equal(methods.Order(StringComparer.Ordinal), stopped.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task WhatIsStoppedWhileItIsMadeReachesNoStream()
    {
        using var stop = new CancellationTokenSource();
        using var stream = new MemoryStream();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            Features.Files.AsyncStreams.WriteAsync(
                stream,
                to =>
                {
                    to.Write([1, 2, 3]);
                    stop.Cancel();
                    to.Write([4]);
                },
                stop.Token
            )
        );
        Assert.Equal(0, stream.Length);
    }

    [Fact]
    public void AFamilyThatIsStoppedLeavesWholeFilesOnly()
    {
        using var folder = new TemporaryFolder();
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() =>
            LongOperations.MakeFamily(2, folder.Root, new Heard(_ => stop.Cancel()), stop.Token)
        );
        string[] meshes = Directory.GetFiles(folder.Root, "*.stl");
        Assert.NotEmpty(meshes);
        Assert.All(meshes, m => Assert.True(Formats.MeshFile.Read(m).ToMesh().IsClosed));
        Assert.False(File.Exists(folder["index.csv"]));
        Assert.False(File.Exists(folder["index.json"]));
    }

    [Fact]
    public void HowSoonWorkStopsIsMeasuredByHand()
    {
        if (Environment.GetEnvironmentVariable("CALIBGEOM_STOPPING") is not { Length: > 0 } file)
            return;
        IEnumerable<string> rows = LongOperations.All.Select(o => Row(o.Key, o.Value(10)));
        File.WriteAllLines(
            file,
            ["| work | takes, ms of processor time | stops within, ms of processor time |", "|---|---|---|", .. rows]
        );
    }

    private static string Row(string name, Action<IProgress<double>, CancellationToken> work)
    {
        // Processor time of all threads, which other work on the machine changes little; on the wall it is at most that
        // while the machine has nothing else to do.
        TimeSpan before = Environment.CpuUsage.TotalTime;
        var whole = Stopwatch.StartNew();
        work(new Heard(_ => { }), CancellationToken.None);
        double took = whole.Elapsed.TotalMilliseconds,
            worked = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds,
            longest = 0;
        for (int tenths = 1; tenths < 10; tenths++)
        {
            using var stop = new CancellationTokenSource();
            TimeSpan asked = default;
            using var timer = new Timer(
                _ =>
                {
                    asked = Environment.CpuUsage.TotalTime;
                    stop.Cancel();
                },
                null,
                (int)(took * tenths / 10),
                Timeout.Infinite
            );
            try
            {
                work(new Heard(_ => { }), stop.Token);
            }
            catch (OperationCanceledException)
            {
                longest = Math.Max(longest, (Environment.CpuUsage.TotalTime - asked).TotalMilliseconds);
            }
        }
        return string.Create(CultureInfo.InvariantCulture, $"| `{name}` | {worked:0} | {longest:0} |");
    }

    private sealed class Heard(Action<double> then) : IProgress<double>
    {
        private readonly Lock adding = new();

        internal List<double> Shares { get; } = [];

        public void Report(double value)
        {
            lock (adding)
                Shares.Add(value);
            then(value);
        }
    }
}
