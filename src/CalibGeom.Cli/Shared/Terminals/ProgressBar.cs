using System.Runtime.InteropServices;
using Spectre.Console;

namespace CalibGeom.Cli.Shared.Terminals;

/// <summary>
/// A bar on a terminal for work that takes over a second; it vanishes with the work. Spectre.Console draws it, whose
/// progress lives within a call: a thread of its own holds that call open while the work reports.
/// </summary>
internal sealed class ProgressBar : IProgress<double>, IDisposable
{
    private const string ShowCursor = "\u001b[?25h";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly CommandIo io;
    private readonly string work;
    private readonly long start;
    private readonly Lock gate = new();
    private readonly ManualResetEventSlim begun = new(),
        over = new();
    private Task? drawing;
    private ProgressContext? context;
    private ProgressTask? bar;
    private string shown = "";

    private ProgressBar(CommandIo io, string work) => (this.io, this.work, start) = (io, work, io.Clock.GetTimestamp());

    /// <summary>A bar where a person looks at a terminal that can draw a line anew, else null.</summary>
    /// <param name="io">Where.</param>
    /// <param name="work">What is being done, in a word or two.</param>
    internal static ProgressBar? For(CommandIo io, string work) =>
        io.Interactive && Screen.CanDrawAnew ? new(io, work) : null;

    public void Report(double value) => Report(work, value);

    /// <summary>Says how much of something is done, 0 to 1.</summary>
    internal void Report(string what, double value)
    {
        lock (gate)
        {
            string now = FormattableString.Invariant($"{what} {(int)(100 * value)}");
            if (now == shown || io.Clock.GetElapsedTime(start) < Patience)
                return;
            shown = now;
            drawing ??= Begin();
            if (bar is null || context is null)
                return; // It could not be drawn; ending it says why.
            bar.Description = Markup.Escape(PlainWriter.Plain(what).ReplaceLineEndings(" "));
            bar.Value = Math.Clamp(value, 0, 1);
            context.Refresh();
        }
    }

    /// <summary>A step of the work, which fills the bar from one share to another.</summary>
    internal IProgress<double> Step(double from, double to) => new Share(this, from, to);

    /// <summary>What is done of something with a name of its own.</summary>
    internal IProgress<double> Of(string what) => new Named(this, what);

    public void Dispose()
    {
        over.Set();
        drawing?.Wait();
        begun.Dispose();
        over.Dispose();
    }

    private Task Begin()
    {
        var task = Task.Factory.StartNew(
            Draw,
            CancellationToken.None,
            TaskCreationOptions.LongRunning,
            TaskScheduler.Default
        );
        begun.Wait();
        return task;
    }

    private void Draw()
    {
        // Whoever ends the program meanwhile gets the cursor back.
        using PosixSignalRegistration interrupt = Showing(PosixSignal.SIGINT),
            end = Showing(PosixSignal.SIGTERM);
        try
        {
            Screen
                .Live(io.Error)
                .Progress()
                .AutoRefresh(false)
                .AutoClear(true)
                .Columns(new ProgressBarColumn(), new PercentageColumn(), new TaskDescriptionColumn())
                .Start(c =>
                {
                    (context, bar) = (c, c.AddTask(work, maxValue: 1));
                    begun.Set();
                    over.Wait();
                });
        }
        finally
        {
            begun.Set();
        }
    }

    private PosixSignalRegistration Showing(PosixSignal signal) =>
        PosixSignalRegistration.Create(signal, _ => ((PlainWriter)io.Error).Inner.Write(ShowCursor));

    private sealed class Named(ProgressBar bar, string what) : IProgress<double>
    {
        public void Report(double value) => bar.Report(what, value);
    }

    private sealed class Share(ProgressBar bar, double from, double to) : IProgress<double>
    {
        public void Report(double value) => bar.Report(from + value * (to - from));
    }
}
