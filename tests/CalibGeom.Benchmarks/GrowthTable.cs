using System.Globalization;

namespace CalibGeom.Benchmarks;

/// <summary>
/// The growth table of docs/limits.md: processor time and allocated memory of every reader and of whole commands at
/// three sizes of a decade, and the exponents fitted to them.
/// </summary>
internal static class GrowthTable
{
    // As often as that, or for so long in ms, whichever is reached first: other work only ever adds to a time.
    private const int Rounds = 9;
    private const double Enough = 4000;

    // ms; what takes longer is timed once.
    private const double Long = 2000;

    /// <summary>Prints the rows whose name holds a text; all by default.</summary>
    internal static void Print(TextWriter writer, string named = "")
    {
        writer.WriteLine("| work | what grows | ms | exponent | allocated, MB | exponent |");
        writer.WriteLine("|---|---|---|---|---|---|");
        foreach (GrowthWork work in GrowthWorks.All.Where(w => w.Name.Contains(named, StringComparison.Ordinal)))
            Row(writer, work);
    }

    private static void Row(TextWriter writer, GrowthWork work)
    {
        int[] sizes = [work.Least, (int)(work.Least * Math.Sqrt(10)), 10 * work.Least];
        string folder = Directory.CreateTempSubdirectory("calibgeom-growth-").FullName;
        (double Time, double Memory)[] taken = [.. sizes.Select(n => Taken(work.Prepare(folder, n)))];
        Directory.Delete(folder, recursive: true);
        double[] times = [.. taken.Select(t => t.Time)],
            memory = [.. taken.Select(t => t.Memory)];
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"| {work.Name} | {string.Join(", ", sizes.Select(n => n.ToString("N0", CultureInfo.InvariantCulture)))} {work.Counted} | {Join(times)} | {Exponent(sizes, times):0.00} | {Join(memory)} | {Exponent(sizes, memory):0.00} |"
            )
        );
    }

    /// <summary>The least of some rounds, after one that is not counted.</summary>
    private static (double Time, double Memory) Taken(Action work)
    {
        (double Time, double Memory) least = (double.PositiveInfinity, double.PositiveInfinity);
        double total = 0;
        for (int round = 0; round <= Rounds; round++)
        {
            if (double.IsFinite(least.Time) && (least.Time > Long || total > Enough))
                break;
            long before = GC.GetTotalAllocatedBytes(precise: true);
            TimeSpan start = Environment.CpuUsage.TotalTime;
            work();
            double time = (Environment.CpuUsage.TotalTime - start).TotalMilliseconds,
                memory = (GC.GetTotalAllocatedBytes(precise: true) - before) / 1e6;
            total += time;
            if (round > 0 || time > Long)
                least = (Math.Min(least.Time, time), Math.Min(least.Memory, memory));
        }
        return least;
    }

    /// <summary>The slope of the logarithm over the logarithm of the size, by least squares.</summary>
    private static double Exponent(int[] sizes, double[] values)
    {
        double[] x = [.. sizes.Select(n => Math.Log(n))],
            y = [.. values.Select(v => Math.Log(Math.Max(v, 1e-3)))];
        double mean = x.Average();
        return x.Zip(y, (a, b) => (a - mean) * b).Sum() / x.Sum(a => (a - mean) * (a - mean));
    }

    private static string Join(double[] values) =>
        string.Join(", ", values.Select(v => v.ToString(v < 10 ? "0.0" : "0", CultureInfo.InvariantCulture)));
}
