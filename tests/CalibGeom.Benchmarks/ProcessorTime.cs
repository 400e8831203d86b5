using System.Diagnostics;

namespace CalibGeom.Benchmarks;

/// <summary>
/// Processor time of all threads, not time on the wall, so that other work on the machine changes it little.
/// </summary>
internal static class ProcessorTime
{
    /// <summary>The least of each, ms, taken in turn when both are warm.</summary>
    internal static (double Work, double Baseline) Least(int rounds, Action work, Action baseline)
    {
        Warm(work);
        Warm(baseline);
        (double, double) best = (double.PositiveInfinity, double.PositiveInfinity);
        for (int i = 0; i < rounds; i++)
            best = (Math.Min(best.Item1, Of(work)), Math.Min(best.Item2, Of(baseline)));
        return best;
    }

    /// <summary>
    /// The runtime compiles anew what is called thirty times, beside the work and into its processor time: it is given
    /// the calls, or some seconds of them, and the time to be done.
    /// </summary>
    private static void Warm(Action action)
    {
        var watch = Stopwatch.StartNew();
        for (int i = 0; i < 40 && (i == 0 || watch.Elapsed.TotalSeconds < 4); i++)
            action();
        Thread.Sleep(300);
    }

    private static double Of(Action action)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        action();
        return (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
    }
}
