using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>
/// A generic optimiser: one process for growth without offset, one for columns lost, over ln(exposure) in units of 0.5
/// and rest in units of 2 s. It looks where few columns may be lost and little is known, and takes up what is left by
/// an offset.
/// </summary>
internal static class GaussianProcessPolicy
{
    private const double TimeScale = 0.5,
        RestScale = 2,
        Worth = 0.002,
        Known = 0.004;

    internal static Played Play(LeaguePrinter printer)
    {
        var growth = new GaussianProcess(0.02, 0.03, 0.0055);
        var lost = new GaussianProcess(8, 6, 1.2);
        ExposureSettings at = printer.Start;
        double most =
            printer.Start.Time
            + LeaguePrinter.MostSlower * (printer.Start.Time + printer.Start.Rest + LeaguePrinter.Lift);
        var visited = new List<ExposureSettings>();
        for (int print = 1; print <= Policies.MostPrints; print++)
        {
            Trial trial = printer.Print(at);
            visited.Add(at);
            double left = (printer.Designed - LeaguePrinter.TargetClearance - Policies.Misfit(printer, trial)) / 2;
            growth.Add(Point(at), left - at.EdgeOffset);
            lost.Add(Point(at), trial.Columns.Count(c => !c.Printed));
            if (print < Policies.MostPrints)
                at = Offset(printer, growth, Candidates(at, most).MinBy(s => Wish(printer, growth, lost, s))!);
        }
        ExposureSettings best = visited.MinBy(s => Cost(printer, growth, lost, s))!;
        return new Played(Offset(printer, growth, best), Policies.MostPrints, true);
    }

    private static IEnumerable<ExposureSettings> Candidates(ExposureSettings last, double most) =>
        from time in new[] { 0.8, 0.87, 0.93, 1, 1.08, 1.16, 1.25 }
        from rest in new[] { 0, 0.5, 1, 1.5 }
        where last.Time * time <= Math.Max(most, last.Time)
        select new ExposureSettings(Math.Round(last.Time * time, 2), Math.Min(6, last.Rest + rest));

    private static double Wish(LeaguePrinter printer, GaussianProcess growth, GaussianProcess lost, ExposureSettings s)
    {
        double left = printer.TargetGrowth - growth.At(Point(s)).Mean;
        (double mean, double deviation) = lost.At(Point(s));
        return mean - deviation + Math.Abs(left - printer.Offset(left)) / Worth;
    }

    // Columns lost, growth that no offset takes up (a column for 2 micrometres), and growth that is not known.
    private static double Cost(LeaguePrinter printer, GaussianProcess growth, GaussianProcess lost, ExposureSettings s)
    {
        (double mean, double deviation) = growth.At(Point(s));
        double left = printer.TargetGrowth - mean;
        return lost.At(Point(s)).Mean
            + (Math.Abs(left - printer.Offset(left)) + Math.Max(0, deviation - Known)) / Worth;
    }

    private static ExposureSettings Offset(LeaguePrinter printer, GaussianProcess growth, ExposureSettings s) =>
        new(s.Time, s.Rest, printer.Offset(printer.TargetGrowth - growth.At(Point(s)).Mean));

    private static (double, double) Point(ExposureSettings s) => (Math.Log(s.Time) / TimeScale, s.Rest / RestScale);
}
