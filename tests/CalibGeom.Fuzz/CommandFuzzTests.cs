using System.Globalization;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Fuzz;

/// <summary>
/// Whole command lines with seeded changes of their files and words: each ends with an answer or a refusal in words,
/// nothing is written over, nothing half-written stays, what is said is plain and short.
/// <c>CALIBGEOM_FUZZ_COMMANDS</c> tells how many to try, three of each by default, <c>CALIBGEOM_FUZZ_SEED</c> where to
/// begin; long runs also hold each to twenty seconds of processor time.
/// </summary>
public sealed class CommandFuzzTests(Xunit.Abstractions.ITestOutputHelper output) : IDisposable
{
    private const int LongestLine = 2000;
    private const double MostSeconds = 20;
    private const int MostFallen = 10;

    private static readonly int Short = 3 * FuzzedCommands.All.Count;
    private static readonly int Runs = Setting("CALIBGEOM_FUZZ_COMMANDS", Short);
    private static readonly Dictionary<string, byte[]> Corpus = Directory
        .GetFiles(Path.Combine(AppContext.BaseDirectory, "corpus"))
        .ToDictionary(f => Path.GetFileName(f)!, File.ReadAllBytes);

    private readonly string before = Environment.CurrentDirectory;
    private readonly string folder = Directory.CreateTempSubdirectory("calibgeom-fuzz-").FullName;

    [Fact]
    public void EveryCommandLineIsAnsweredOrRefusedInWords()
    {
        var codes = new int[3];
        (double Seconds, string Line) slowest = default;
        var fallen = new List<string>();
        int first = Setting("CALIBGEOM_FUZZ_SEED", 0);
        for (int seed = first; seed < first + Runs; seed++)
        {
            var line = new FuzzedLine(seed, Corpus);
            // Processor time: other work on the machine is no fault of a command line.
            TimeSpan start = Environment.CpuUsage.TotalTime;
            try
            {
                codes[Tried(line, seed)]++;
            }
            catch (Xunit.Sdk.XunitException e)
            {
                fallen.Add(e.Message);
                if (fallen.Count == MostFallen)
                    break;
            }
            double seconds = (Environment.CpuUsage.TotalTime - start).TotalSeconds;
            if (seconds > slowest.Seconds)
                slowest = (seconds, string.Join(' ', line.Words));
            Assert.True(Runs <= Short || seconds < MostSeconds, $"seed {seed}: {seconds:0.0} s, {slowest.Line}");
        }
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Runs:N0} command lines: exit codes 0, 1, 2: {string.Join(", ", codes)}; slowest {slowest.Seconds:0.0} s: {slowest.Line}"
            )
        );
        Assert.True(fallen.Count == 0, string.Join("\n", fallen));
        // Changes that nothing survives, or that all do, would try nothing.
        Assert.True(codes[0] > Runs / 20 && codes[2] > Runs / 5, string.Join(", ", codes));
    }

    public void Dispose()
    {
        Environment.CurrentDirectory = before;
        Directory.Delete(folder, recursive: true);
    }

    private int Tried(FuzzedLine line, int seed)
    {
        string place = Directory.CreateDirectory(Path.Combine(folder, $"{seed}")).FullName;
        Directory.CreateDirectory(Path.Combine(place, "out"));
        foreach ((string name, byte[] content) in line.Files)
            File.WriteAllBytes(Path.Combine(place, name), content);
        Environment.CurrentDirectory = place;
        using StringWriter said = new(),
            error = new();
        var io = new CommandIo
        {
            Out = said,
            Error = error,
            OpenInput = () => new MemoryStream(line.Input),
            OpenOutput = () => new MemoryStream(),
        };
        int code = CommandHost.Run(line.Words, io);
        string which = $"seed {seed}: {string.Join(' ', line.Words)}\n{error}";
        Assert.True(code is ExitCode.Done or ExitCode.Finding or ExitCode.BadUse, $"exit code {code}, {which}");
        RequirePlain(said.ToString(), which);
        RequirePlain(error.ToString(), which);
        Assert.True(code != ExitCode.BadUse || error.ToString().Length > 20, which);
        RequireWhole(place, line, code, which);
        Environment.CurrentDirectory = before;
        Directory.Delete(place, recursive: true);
        return code;
    }

    private static void RequireWhole(string place, FuzzedLine line, int code, string which)
    {
        foreach ((string name, byte[] content) in line.Files)
        {
            byte[] now = File.ReadAllBytes(Path.Combine(place, name));
            bool appended = line.Appends && code == ExitCode.Done;
            Assert.True(
                appended ? now.AsSpan().StartsWith(content) : now.AsSpan().SequenceEqual(content),
                $"{name} is not what it was, {which}"
            );
        }
        string[] files = Directory.GetFiles(place, "*", SearchOption.AllDirectories);
        Assert.DoesNotContain(files, f => f.EndsWith(".tmp", StringComparison.Ordinal));
        // The journal of a family stays for the next run.
        if (code == ExitCode.BadUse && !line.Words.Contains("--sweep"))
            Assert.True(
                files.Length == line.Files.Count,
                $"written though refused: {string.Join(' ', files)}, {which}"
            );
    }

    private static void RequirePlain(string said, string which)
    {
        Assert.True(said.All(c => c is '\n' or '\t' || !char.IsControl(c)), $"no plain text, {which}");
        Assert.True(said.All(c => c is not ('\u202E' or '\uFEFF')), $"text that is turned, {which}");
        Assert.True(
            said.StartsWith('{') || said.Split('\n').All(l => l.Length <= LongestLine),
            $"{said.Split('\n').Max(l => l.Length)} characters in a line, {which}"
        );
    }

    private static int Setting(string name, int otherwise) =>
        Environment.GetEnvironmentVariable(name) is { Length: > 0 } text
            ? int.Parse(text, CultureInfo.InvariantCulture)
            : otherwise;
}
