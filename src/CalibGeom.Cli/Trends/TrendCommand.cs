using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Trends;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Trends;

/// <summary><c>calibgeom trend</c>: whether the process still is what was calibrated.</summary>
internal static class TrendCommand
{
    internal static Command Build(CommandIo io)
    {
        var log = new Argument<string>("LOG") { Description = "The log of prints; - is standard input." };
        Option<double> tolerance = Number(
                "--tolerance",
                "MM",
                "How far a clearance may move, mm per side. Default 0.012.",
                TrendOptions.Default.Tolerance
            ),
            light = Number(
                "--light-tolerance",
                "PERCENT",
                "How far the light may move, per cent. Default 10.",
                100 * TrendOptions.Default.LightTolerance
            ),
            length = Number(
                "--run-length",
                "N",
                "One false alarm in about so many coupons. Default 50.",
                TrendOptions.Default.RunLength
            ),
            between = Number(
                "--between-prints",
                "MM",
                "Standard deviation of growth between prints, mm. Default 0.005.",
                TrendOptions.Default.BetweenPrints
            ),
            months = Number(
                "--months",
                "N",
                "Months of frequent use after which to calibrate anew; 0 for never. Default 6.",
                6
            );
        var baseline = new Option<int>("--baseline")
        {
            Description = "How many coupons stand before any sudden change. Default 2.",
            HelpName = "N",
            DefaultValueFactory = _ => TrendOptions.Default.Baseline,
        };
        var plot = new Option<string?>("--plot")
        {
            Description = "Draw the coupons over time (.svg or .png).",
            HelpName = "FILE",
        };
        var report = new Option<string?>("--report")
        {
            Description = "Write the answer as a page to file as well: plots, table, exact inputs.",
            HelpName = "FILE.html",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "trend",
            """
            Say whether the process still is what was calibrated: not seen to move, drifting, or recalibrate now.

            Prints at the settings and conditions of the last one are compared; a change of either starts a new state.
            Exit codes: 0 answered, 1 recalibrate now, 2 bad use or a log that cannot be read.

            Example:
              calibgeom trend demo-grey.jsonl --plot trend.svg
            """
        );
        command.Arguments.Add(log);
        foreach (
            Option option in new Option[] { tolerance, light, length, between, baseline, months, plot, report, json }
        )
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            TrendOptions options = Checked(() =>
                new TrendOptions
                {
                    Tolerance = parsed.GetValue(tolerance),
                    LightTolerance = parsed.GetValue(light) / 100,
                    RunLength = parsed.GetValue(length),
                    BetweenPrints = parsed.GetValue(between),
                    Baseline = parsed.GetValue(baseline),
                }
            );
            double after = parsed.GetValue(months);
            string path = parsed.GetValue(log)!;
            string? picture = parsed.GetValue(plot);
            if (picture is not null)
                Drawing.RequireName(picture);
            string? page = parsed.GetValue(report);
            if (page is not null)
                RecordFile.RequireName(page);
            TrialLog read = LogInput.Read(io, path);
            LearntEffects effects = LearntEffects.Of(TrendLog.Of(read.Entries));
            TrendAnswer answer = Checked(() => TrendAnswer.Of(read.Entries, effects.In(options), after));
            IReadOnlyList<Finding> findings = [.. answer.Findings, EffectWords.Of(effects), .. read.Findings];
            using (var outputs = io.NewOutputs())
            {
                if (picture is not null)
                    outputs.Add(picture, s => TrendPlot.Draw(answer).Write(picture, s));
                if (page is not null)
                    outputs.Add(page, TrendRecord.Page(path, answer, findings).Write);
                outputs.Commit();
            }
            if (parsed.GetValue(json))
                Envelope.Write(io.Out, "trend", findings, TrendReport.Json(answer));
            else
                TrendReport.Write(io.Out, answer, findings);
            return answer.Verdict == TrendVerdict.Recalibrate ? ExitCode.Finding : ExitCode.Done;
        });
        return command;
    }

    private static Option<double> Number(string name, string help, string description, double otherwise) =>
        new(name)
        {
            Description = description,
            HelpName = help,
            DefaultValueFactory = _ => otherwise,
        };

    private static T Checked<T>(Func<T> make)
    {
        try
        {
            return make();
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e);
        }
    }
}
