using System.Diagnostics;
using System.IO.Pipes;
using System.Text;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// A pipe as an output is written to where it has the name of a device, refused where it has that of a file, and never
/// read to see whose it is: nobody would end its other side.
/// </summary>
[Collection(CurrentDirectory.Name)]
public class PipeTests
{
    private const string Simulate = "simulate --object witness --dp 0.12 --ec 4 --irradiance 4 --time 2.5";

    [Theory]
    [InlineData("make --object witness -o pipe.stl")]
    [InlineData("make --object witness -o new.stl --sheet pipe.html")]
    [InlineData("make --object witness -o new.stl --picture pipe.svg")]
    [InlineData("make --object witness --sweep columns.lean=0 -o pipe.stl")]
    [InlineData("readings --object witness -o pipe.csv")]
    [InlineData("draw --object witness -o pipe.svg")]
    [InlineData(Simulate + " -o pipe.csv")]
    [InlineData("place holder.stl --plate 150x90 -o pipe.stl")]
    [InlineData("place holder.stl --plate 150x90 -o pipe.stl --force")]
    [InlineData("predict bench.csv --report pipe.html")]
    [InlineData("tune demo-grey.jsonl --plot pipe.svg")]
    [InlineData("tune demo-grey.jsonl --card pipe.png")]
    [InlineData("trend demo-grey.jsonl --plot pipe.svg")]
    [InlineData("map plate.jsonl --grid pipe.csv")]
    [InlineData("log add bench.csv --to pipe.jsonl --time 2.5 --rest 1")]
    public void ANamedPipeIsRefusedAtOnceAndStays(string line)
    {
        if (OperatingSystem.IsWindows())
            return;
        Within(() =>
        {
            string pipe = line.Split(' ').Single(w => w.StartsWith("pipe.", StringComparison.Ordinal));
            MakePipe(pipe);
            string[] before = Directory.GetFileSystemEntries(".");
            CliRun run = CliRun.Of(line.Split(' '));
            Assert.Equal(2, run.ExitCode);
            Assert.Contains(pipe, run.Error, StringComparison.Ordinal);
            Assert.Contains(
                "pipe. Name a file",
                run.Error.Replace(", which a file cannot replace", "", StringComparison.Ordinal),
                StringComparison.Ordinal
            );
            Assert.Equal(before.Order(), Directory.GetFileSystemEntries(".").Order());
        });
    }

    [Theory]
    [InlineData("readings --object witness -o {0}")]
    [InlineData("draw --object witness -o link.svg")]
    [InlineData(Simulate + " -o {0}")]
    [InlineData("make --object witness -o {0}")]
    [InlineData("place holder.stl --plate 150x90 -o {0}")]
    public async Task AnOpenDescriptorIsWrittenToOrRefusedAtOnce(string line)
    {
        if (OperatingSystem.IsWindows())
            return;
        using var read = new AnonymousPipeServerStream(PipeDirection.In);
        string path = $"/dev/fd/{read.GetClientHandleAsString()}";
        Task<string> said = Task.Run(() => new StreamReader(read, Encoding.UTF8).ReadToEnd());
        CliRun? run = null;
        Within(() =>
        {
            File.CreateSymbolicLink("link.svg", path);
            run = CliRun.Of(string.Format(System.Globalization.CultureInfo.InvariantCulture, line, path).Split(' '));
        });
        read.DisposeLocalCopyOfClientHandle();
        string written = await said;
        if (line.Contains(".svg", StringComparison.Ordinal))
            Assert.StartsWith("<svg", written, StringComparison.Ordinal);
        else if (
            line.StartsWith("make", StringComparison.Ordinal) || line.StartsWith("place", StringComparison.Ordinal)
        )
            Assert.Contains("Use - for standard output.", run!.Error, StringComparison.Ordinal);
        else
            Assert.Contains("feature,value", written, StringComparison.Ordinal);
        Assert.Equal(written.Length > 0 ? 0 : 2, run!.ExitCode);
    }

    [Fact]
    public void APipeThatLooksLikeAnObjectFileIsPassedOver()
    {
        if (OperatingSystem.IsWindows())
            return;
        Within(() =>
        {
            MakePipe("a.object.json");
            CliRun.Of("make", "--object", "witness", "--set", "nest.clearances=0.08", "-o", "mine.stl");
            string digest = Objects.ObjectFinder.Read("mine.object.json", []).Digest!;
            Assert.NotNull(Objects.ObjectFinder.Find(digest, ["."]));
            File.WriteAllText("r.csv", "# digest 0123456789abcdef\nfeature,value\nbox1.outside.x,8\n");
            Assert.Equal(2, CliRun.Of("predict", "r.csv").ExitCode);
        });
    }

    private static void MakePipe(string path)
    {
        using var make = Process.Start("mkfifo", path);
        make.WaitForExit();
        Assert.Equal(0, make.ExitCode);
    }

    private static void Within(Action work)
    {
        using var folder = new TemporaryFolder();
        DemoSamples.Within(folder, work);
    }
}
