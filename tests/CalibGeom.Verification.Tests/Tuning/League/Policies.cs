using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>What plays against tune. Each gets five prints and says the settings it keeps.</summary>
internal static class Policies
{
    internal const int MostPrints = 5;

    private const int MostPatience = 12;

    internal static Played Tune(LeaguePrinter printer)
    {
        (IReadOnlyList<Trial> trials, NextStep next) = Session(printer, MostPrints);
        bool stopped = next.Kind == NextKind.Stop;
        return new Played(next.Keep, trials.Count, stopped)
        {
            PrintsToStop = stopped ? trials.Count : Session(printer.Again(), MostPatience).Trials.Count,
            Held = Held.Of(printer, NewestState.Of(trials, printer.Options).Of([.. trials]), next.Keep),
        };
    }

    private static (IReadOnlyList<Trial> Trials, NextStep Next) Session(LeaguePrinter printer, int mostPrints)
    {
        TuneOptions options = printer.Options;
        var trials = new List<Trial> { printer.Print(printer.Start) };
        while (true)
        {
            NextStep next = Tuner.Next(trials, options);
            if (next.Kind == NextKind.Stop || trials.Count == mostPrints)
                return (trials, next);
            trials.Add(printer.Print(next.Settings));
        }
    }

    // Common practice: 4 or 8 % of exposure for a misfit, half a second of rest added twice.
    internal static Played HandRule(LeaguePrinter printer)
    {
        ExposureSettings at = printer.Start;
        for (int print = 1; print <= MostPrints; print++)
        {
            double misfit = Misfit(printer, printer.Print(at)),
                share = Math.Abs(misfit) < 0.005 ? 0
                : Math.Abs(misfit) < 0.02 ? 0.04
                : 0.08;
            at = new ExposureSettings(
                Math.Round(at.Time * (1 + Math.Sign(misfit) * share), 2),
                at.Rest + (print <= 2 ? 0.5 : 0)
            );
        }
        return new Played(at, MostPrints, true);
    }

    internal static Played Secant(LeaguePrinter printer)
    {
        ExposureSettings at = printer.Start;
        var seen = new List<(double LogTime, double Misfit)>();
        for (int print = 1; print <= MostPrints; print++)
        {
            seen.Add((Math.Log(at.Time), Misfit(printer, printer.Print(at))));
            double slope = 2 * 0.03;
            if (seen.Count > 1 && Math.Abs(seen[^1].LogTime - seen[^2].LogTime) > 0.01)
                slope = Math.Clamp(
                    (seen[^2].Misfit - seen[^1].Misfit) / (seen[^1].LogTime - seen[^2].LogTime),
                    0.02,
                    0.3
                );
            at = new ExposureSettings(
                Math.Round(at.Time * Math.Exp(Math.Clamp(seen[^1].Misfit / slope, -0.25, 0.25)), 2),
                at.Rest
            );
        }
        return new Played(at, MostPrints, true);
    }

    internal static Played OffsetOnly(LeaguePrinter printer)
    {
        double offset = 0,
            sum = 0;
        for (int print = 1; print <= MostPrints; print++)
        {
            var at = new ExposureSettings(printer.Start.Time, printer.Start.Rest, offset);
            sum += offset + Misfit(printer, printer.Print(at)) / 2;
            offset = printer.Offset(sum / print);
        }
        return new Played(new ExposureSettings(printer.Start.Time, printer.Start.Rest, offset), MostPrints, true);
    }

    /// <summary>
    /// How much larger than wanted the clearance was by the caliper, or by the words where nothing was measured, mm.
    /// </summary>
    internal static double Misfit(LeaguePrinter printer, Trial print)
    {
        double clearance = print.GrowthX is { } x
            ? printer.Designed - (x.Value + print.GrowthY!.Value)
            : print.Joints.Average(j =>
                j.Fit switch
                {
                    Readings.FeltFit.Refuses => -0.01,
                    Readings.FeltFit.Binds => 0.01,
                    Readings.FeltFit.Slides => 0.045,
                    _ => 0.08,
                }
            );
        return clearance - LeaguePrinter.TargetClearance;
    }
}
