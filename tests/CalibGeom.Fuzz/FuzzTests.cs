using System.Diagnostics;
using System.Globalization;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Fuzz;

/// <summary>
/// Files of the corpus with seeded changes: reading ends with a value or with an <see cref="InputException"/>, takes no
/// more than 64 MB and four times the file, and what is said of it is plain and short. <c>CALIBGEOM_FUZZ</c> tells how
/// many files to try for each reader, 400 by default, and <c>CALIBGEOM_FUZZ_SEED</c> where to begin; long runs also
/// hold each reading to two seconds.
/// </summary>
public class FuzzTests(Xunit.Abstractions.ITestOutputHelper output)
{
    private const int Short = 400,
        Longest = 2000;

    private static readonly int Runs = Setting("CALIBGEOM_FUZZ", Short);

    public static TheoryData<string> Names => [.. FuzzedReaders.All.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryFileIsReadOrRefusedInWords(string name)
    {
        FuzzedReader reader = FuzzedReaders.All.Single(r => r.Name == name);
        byte[][] corpus =
        [
            .. reader.Corpus.Select(f =>
                reader.Opened(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "corpus", f)))
            ),
        ];
        foreach (byte[] original in corpus)
            reader.Read(reader.Packed(original));
        int read = 0,
            first = Setting("CALIBGEOM_FUZZ_SEED", 0);
        double slowest = 0;
        long most = 0;
        for (int seed = first; seed < first + Runs; seed++)
        {
            byte[] file = reader.Packed(
                new Mutator(seed).Changed(corpus[seed % corpus.Length], corpus[(seed / 7) % corpus.Length])
            );
            long before = GC.GetAllocatedBytesForCurrentThread(),
                start = Stopwatch.GetTimestamp();
            bool whole = IsRead(reader, file, seed);
            slowest = Math.Max(slowest, Stopwatch.GetElapsedTime(start).TotalSeconds);
            long taken = GC.GetAllocatedBytesForCurrentThread() - before - 4L * file.Length;
            most = Math.Max(most, taken);
            read += whole ? 1 : 0;
            Assert.True(taken <= 64 << 20, $"{name}, seed {seed}: {taken} bytes above four times the file");
            Assert.True(Runs <= Short || slowest < 2, $"{name}, seed {seed}: {slowest:0.00} s");
        }
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"| {name} | {Runs:N0} | {100.0 * read / Runs:0} | {slowest * 1000:0} | {most / 1e6:0.0} |"
            )
        );
        // Changes that nothing survives, or that all do, would try nothing.
        Assert.InRange(read, 1, Runs - 1);
    }

    private static bool IsRead(FuzzedReader reader, byte[] file, int seed)
    {
        try
        {
            reader.Read(file);
            return true;
        }
        catch (InputException e)
        {
            RequirePlain(Said(e.Message), $"{reader.Name}, seed {seed}");
            return false;
        }
        catch (Exception e)
        {
            throw new InvalidOperationException($"{reader.Name}, seed {seed}: {e.GetType().Name}: {e.Message}", e);
        }
    }

    /// <summary>What the command line says of a refusal.</summary>
    private static string Said(string message)
    {
        using var error = new StringWriter();
        var io = new CommandIo
        {
            Out = TextWriter.Null,
            Error = error,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
        };
        Failure.Tell(io, "calibgeom inspect", message, json: false, ExitCode.BadUse);
        return error.ToString();
    }

    private static void RequirePlain(string said, string which)
    {
        Assert.True(said.Length is > 20 and <= Longest, $"{which}: {said.Length} characters");
        Assert.True(
            said.All(c => (c is '\n' or '\t' || !char.IsControl(c)) && c is not ('\u202E' or '\uFEFF')),
            $"{which}: {said}"
        );
    }

    private static int Setting(string name, int otherwise) =>
        Environment.GetEnvironmentVariable(name) is { Length: > 0 } text
            ? int.Parse(text, CultureInfo.InvariantCulture)
            : otherwise;
}
