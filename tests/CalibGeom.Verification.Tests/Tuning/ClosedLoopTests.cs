using System.Globalization;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using Xunit.Abstractions;

namespace CalibGeom.Verification.Tests.Tuning;

public class ClosedLoopTests(ITestOutputHelper output)
{
    private const int Printers = 500,
        FirstSeed = 20000;
    private const double GrowthTolerance = 0.006,
        Step = 1.122;

    [Fact]
    public void TuningFindsNineOfTenRandomPrinters()
    {
        var tuned = new LoopResult[Printers];
        var byHand = new LoopResult[Printers];
        Parallel.For(
            0,
            Printers,
            i =>
            {
                tuned[i] = Tuned(new HiddenPrinter((ulong)(FirstSeed + i)), TuneOptions.Default);
                byHand[i] = ByHand(new HiddenPrinter((ulong)(FirstSeed + i)));
            }
        );
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "tune.md"));
        foreach (string row in new[] { Row("`tune`", tuned), Row("hand rule", byHand) })
        {
            output.WriteLine(row);
            Assert.Contains(row, page, StringComparison.Ordinal);
        }
        Assert.All(tuned, r => Assert.True(r.WithinBounds));
        Assert.All(tuned, r => Assert.InRange(r.Prints, 2, 5));
        Assert.True(tuned.Count(Good) >= 0.9 * Printers);
        Assert.True(tuned.Count(Good) > byHand.Count(Good));
    }

    [Fact]
    public void ThePageTablesTheRangesThatAreDrawnFrom()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "tune.md"));
        Assert.All(HiddenRanges.Rows(), row => Assert.Contains(row + "\n", page, StringComparison.Ordinal));
        Assert.Contains($"seeds {FirstSeed} to {FirstSeed + Printers - 1}", page, StringComparison.Ordinal);
    }

    private static bool Good(LoopResult r) => Math.Abs(r.GrowthError) <= GrowthTolerance && r.ColumnRatio <= Step;

    internal static LoopResult Tuned(HiddenPrinter printer, TuneOptions options)
    {
        options = options with { Target = printer.TargetClearance };
        var trials = new List<Trial> { printer.Print(printer.Start) };
        bool within = true;
        NextStep next = Tuner.Next(trials, options);
        void Print(ExposureSettings settings)
        {
            within &= Within(trials[^1].Settings, settings, options);
            trials.Add(printer.Print(settings));
            next = Tuner.Next(trials, options);
        }

        while (trials.Count < 4 && next.Kind == NextKind.Change)
            Print(next.Settings);
        // The confirmation: the same exposure and rest once more, only the edge offset may be trimmed.
        if (next.Kind != NextKind.Stop)
            Print(next.Keep);
        return Judge(printer, next.Keep, trials.Count, within, options);
    }

    // Common practice: a little exposure for a small misfit, rest added twice; four prints, then kept.
    private static LoopResult ByHand(HiddenPrinter printer)
    {
        ExposureSettings at = printer.Start;
        int prints = 0;
        for (int trial = 1; trial <= 4; trial++)
        {
            Trial print = printer.Print(at);
            prints++;
            double misfit = printer.Designed - (print.GrowthX!.Value + print.GrowthY!.Value) - printer.TargetClearance;
            double change =
                Math.Abs(misfit) < 0.005 ? 0
                : Math.Abs(misfit) < 0.02 ? 0.1
                : 0.2;
            at = new ExposureSettings(
                Math.Max(0.3, at.Time + Math.Sign(misfit) * change),
                at.Rest + (trial <= 2 ? 0.5 : 0)
            );
        }
        return Judge(printer, at, prints + 1, true, TuneOptions.Default);
    }

    private static LoopResult Judge(
        HiddenPrinter printer,
        ExposureSettings at,
        int prints,
        bool within,
        TuneOptions options
    ) =>
        new(
            printer.Growth(at.Time, at.Rest) + at.EdgeOffset - printer.TargetGrowth,
            printer.ColumnLimit(at.Time) / printer.BestReachable(options),
            prints,
            within
        );

    private static bool Within(ExposureSettings from, ExposureSettings to, TuneOptions options)
    {
        double ratio = to.Time / from.Time;
        bool time =
            ratio == 1
            || (
                ratio <= 1 + options.MostUp + 1e-12
                && ratio >= 1 - options.MostDown - 1e-12
                && Math.Abs(ratio - 1) >= options.LeastStep - 1e-12
            );
        return time
            && to.Rest - from.Rest <= options.MostRestStep + 1e-12
            && to.Rest is >= 0
            && to.Rest <= options.MostRest;
    }

    /// <summary>The row of the table in docs/tune.md that these results are.</summary>
    internal static string Row(string who, LoopResult[] results)
    {
        double Share(Func<LoopResult, bool> of) => 100.0 * results.Count(of) / results.Length;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {who} | {Share(Good):0.0} % | {Share(r => Math.Abs(r.GrowthError) <= GrowthTolerance):0.0} % | "
                + $"{Share(r => r.ColumnRatio <= Step):0.0} % | {results.Average(r => r.Prints):0.00} |"
        );
    }

    internal sealed record LoopResult(double GrowthError, double ColumnRatio, int Prints, bool WithinBounds);
}
