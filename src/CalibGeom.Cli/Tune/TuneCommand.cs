using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Tuning;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Tune;

/// <summary><c>calibgeom tune</c>: which exposure next, and when to stop.</summary>
internal static class TuneCommand
{
    internal static Command Build(CommandIo io)
    {
        var log = new Argument<string?>("LOG")
        {
            Description = "The log of trials, JSON Lines; - is standard input.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var target = new Option<double?>("--target")
        {
            Description = "Wanted clearance per side of the first joint, mm; default: as designed.",
            HelpName = "MM",
        };
        var tolerance = new Option<double>("--tolerance")
        {
            Description = "How far a clearance may lie from its target, mm. Default 0.012.",
            HelpName = "MM",
            DefaultValueFactory = _ => TuneOptions.Default.Tolerance,
        };
        var column = new Option<double?>("--column")
        {
            Description = "The thinnest column you need, mm.",
            HelpName = "MM",
        };
        var height = new Option<double>("--height")
        {
            Description = "Height of the production part that print time is priced at, mm. Default 60.",
            HelpName = "MM",
            DefaultValueFactory = _ => TuneOptions.Default.ProductionHeight,
        };
        var modulus = new Option<double?>("--modulus")
        {
            Description = "Young's modulus as printed, MPa: tells buckling and bending loads of columns.",
            HelpName = "MPA",
        };
        var columnHeight = new Option<double>("--column-height")
        {
            Description = "Height of the columns for those loads, mm. Default 6.3.",
            HelpName = "MM",
            DefaultValueFactory = _ => TuneOptions.Default.ColumnHeight,
        };
        var prior = new Option<string[]>("--prior")
        {
            Description =
                $"Set one prior, such as timeEffect=0.02 or, with its 95 %, timeEffect=0.02/0.01/0.04; may be "
                + $"repeated. Names: {string.Join(", ", PriorNames.All)}.",
            HelpName = "NAME=VALUE",
        };
        var rule = new Option<string[]>("--rule")
        {
            Description =
                $"Set one rule of the recommendation, such as mostRest=3; may be repeated. Names: "
                + $"{string.Join(", ", TuneRules.All)}.",
            HelpName = "NAME=VALUE",
        };
        var thresholds = new Option<string?>("--thresholds")
        {
            Description = "Where binding, sliding and rattling begin, mm. Default: 0/0.02/0.07.",
            HelpName = "B/S/R",
        };
        var hold = new Option<string[]>("--hold")
        {
            Description = "What is left as it is: time, rest or offset; may be repeated.",
            HelpName = "WHAT",
        };
        var noOffset = new Option<bool>("--no-offset") { Description = "No edge offset may be entered." };
        var pixel = new Option<string?>("--pixel")
        {
            Description =
                "Pixel pitch, mm, or one for X and one for Y: without grey levels offsets are advised in whole pixels. Default: as the log has it.",
            HelpName = PixelText.Help,
        };
        var timeStep = Step(
            "--time-step",
            "To what the machine rounds exposure",
            "s",
            "S",
            TuneOptions.Default.TimeStep
        );
        var restStep = Step("--rest-step", "To what the machine rounds rest", "s", "S", TuneOptions.Default.RestStep);
        var offsetStep = Step(
            "--offset-step",
            "To what the slicer rounds an edge offset",
            "mm",
            "MM",
            TuneOptions.Default.OffsetStep
        );
        var quoted = new QuotedOptions();
        var plot = new Option<string?>("--plot")
        {
            Description = "Draw clearance over rest and exposure (.svg or .png).",
            HelpName = "FILE",
        };
        var columnPlot = new Option<string?>("--column-plot")
        {
            Description = "Draw the survival of columns (.svg or .png).",
            HelpName = "FILE",
        };
        var report = new Option<string?>("--report")
        {
            Description = "Write the answer as a page to file as well: plots, tables, the log.",
            HelpName = "FILE.html",
        };
        var card = new Option<string?>("--card")
        {
            Description = "Write a settings card for the machine, A6: .svg, .png or .pdf.",
            HelpName = "FILE",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "tune",
            """
            Say what to print next - exposure, rest, edge offset - or that it is time to stop.

            Trials under other conditions than the last are kept apart and said. Exit codes: 0 answered, 2 bad use or a log that cannot be read.

            Example:
              calibgeom tune demo-grey.jsonl --target 0.05 --plot demo-grey.svg
            """
        );
        command.Arguments.Add(log);
        foreach (
            Option option in new Option[]
            {
                target,
                tolerance,
                column,
                height,
                modulus,
                columnHeight,
                prior,
                rule,
                thresholds,
                hold,
                noOffset,
                pixel,
                timeStep,
                restStep,
                offsetStep,
                quoted.Depth,
                quoted.Dose,
                quoted.Irradiance,
                plot,
                columnPlot,
                report,
                card,
                json,
            }
        )
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            string path =
                parsed.GetValue(log)
                ?? throw new InputException(
                    InputIds.Option,
                    "Name a log: calibgeom tune LOG. To begin one: calibgeom log add READINGS --to LOG."
                );
            TuneOptions options = Checked(() =>
                TuneRules.Apply(TuneOptions.Default, parsed.GetValue(rule) ?? []) with
                {
                    Target = parsed.GetValue(target),
                    Tolerance = parsed.GetValue(tolerance),
                    WantedColumn = parsed.GetValue(column),
                    ProductionHeight = parsed.GetValue(height),
                    Modulus = parsed.GetValue(modulus),
                    ColumnHeight = parsed.GetValue(columnHeight),
                    Hold = HeldWords.Read(parsed.GetValue(hold) ?? []),
                    OffsetAllowed = !parsed.GetValue(noOffset),
                    Pixel = parsed.GetValue(pixel) is { } pitch ? PixelText.Parse(pitch, 0.005, 0.5) : null,
                    TimeStep = parsed.GetValue(timeStep),
                    RestStep = parsed.GetValue(restStep),
                    OffsetStep = parsed.GetValue(offsetStep),
                    Quoted = quoted.Read(parsed),
                    Priors = PriorNames.Apply(parsed.GetValue(prior) ?? []) with
                    {
                        Fits = ThresholdText.Read(parsed.GetValue(thresholds)),
                    },
                }
            );
            var pages = (parsed.GetValue(report), parsed.GetValue(card));
            return Run(
                io,
                path,
                options,
                parsed.GetValue(plot),
                parsed.GetValue(columnPlot),
                pages,
                parsed.GetValue(json)
            );
        });
        return command;
    }

    private static Option<double> Step(string name, string what, string unit, string help, double value) =>
        new(name)
        {
            Description = FormattableString.Invariant($"{what}, {unit}. Default {value}."),
            HelpName = help,
            DefaultValueFactory = _ => value,
        };

    private static int Run(
        CommandIo io,
        string path,
        TuneOptions options,
        string? plot,
        string? columnPlot,
        (string? Report, string? Card) pages,
        bool json
    )
    {
        foreach (string name in new[] { plot, columnPlot, pages.Card }.OfType<string>())
            Drawing.RequireName(name);
        if (pages.Report is not null)
            RecordFile.RequireName(pages.Report);
        TrialLog log = LogInput.Read(io, path);
        IReadOnlyList<Trial> trials = log.Trials;
        if (trials.Count == 0)
            throw new InputException(InputIds.Option, $"{path} holds no trial. Add one with calibgeom log add.");
        TuningResult result = Checked(() => Tuner.Run(trials, options));
        using (var outputs = io.NewOutputs())
        {
            if (plot is not null)
                outputs.Add(plot, s => ExposurePlot.Draw(result).Write(plot, s));
            if (columnPlot is not null)
                outputs.Add(columnPlot, s => ColumnPlot.Draw(result).Write(columnPlot, s));
            if (pages.Report is not null)
                TuneRecord.AddReport(outputs, pages.Report, path, result);
            if (pages.Card is not null)
                TuneRecord.AddCard(outputs, pages.Card, result);
            outputs.Commit();
        }
        if (json)
            Envelope.Write(io.Out, "tune", [.. log.Findings, .. result.Findings], TuneJson.Of(result));
        else
        {
            FindingText.Write(io.Error, log.Findings);
            TuneReport.Write(io.Out, result);
            io.SayCaution();
        }
        foreach (string written in new[] { plot, columnPlot, pages.Report, pages.Card }.OfType<string>())
            io.Say($"wrote {written}");
        return ExitCode.Done;
    }

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
