namespace CalibGeom.Cli.Shared;

/// <summary>A bar on a terminal for work that takes over a second; it vanishes with the work.</summary>
internal sealed class ProgressBar(TextWriter terminal, TimeProvider clock) : IProgress<double>, IDisposable
{
    private const int Width = 40;
    private readonly long start = clock.GetTimestamp();
    private int drawn = -1;

    public void Report(double value)
    {
        int filled = (int)(value * Width);
        if (filled <= drawn || clock.GetElapsedTime(start).TotalSeconds < 1)
            return;
        drawn = filled;
        terminal.Write($"\r[{new string('#', filled)}{new string(' ', Width - filled)}]");
    }

    /// <summary>A step of the work, which fills the bar from one share to another.</summary>
    internal IProgress<double> Step(double from, double to) => new Share(this, from, to);

    public void Dispose()
    {
        if (drawn >= 0)
            terminal.Write($"\r{new string(' ', Width + 2)}\r");
    }

    private sealed class Share(ProgressBar bar, double from, double to) : IProgress<double>
    {
        public void Report(double value) => bar.Report(from + value * (to - from));
    }
}
