using System.Diagnostics;

namespace CalibGeom.Cli;

/// <summary>A bar on a terminal for work that takes over a second; it vanishes with the work.</summary>
internal sealed class ProgressBar(TextWriter terminal) : IProgress<double>, IDisposable
{
    private const int Width = 40;
    private readonly long start = Stopwatch.GetTimestamp();
    private int drawn = -1;

    public void Report(double value)
    {
        int filled = (int)(value * Width);
        if (filled == drawn || Stopwatch.GetElapsedTime(start).TotalSeconds < 1) return;
        drawn = filled;
        terminal.Write($"\r[{new string('#', filled)}{new string(' ', Width - filled)}]");
    }

    public void Dispose()
    {
        if (drawn >= 0) terminal.Write($"\r{new string(' ', Width + 2)}\r");
    }
}
