using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary><c>calibgeom predict</c>: from readings to the clearance to expect.</summary>
internal static class PredictCommand
{
    internal static Command Build(CommandIo io)
    {
        var paths = new Argument<string[]>("READINGS")
        {
            Description = "Readings, CSV or JSON: one file a print of the same object; - is standard input.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var printed = new ObjectOption("the one whose digest the readings name, beside them or in the current folder");
        var own = new Option<string?>("--for")
        {
            Description =
                "A joint of your own: designed peg and hole in mm, such as 20/20.2, or an ISO 286 fit by name, such "
                + "as 12H7/g6.",
            HelpName = "P/H",
        };
        var want = new Option<double?>("--want")
        {
            Description = "With --for: the clearance per side you want, mm. Default: the designed one.",
            HelpName = "MM",
        };
        var limits = new Option<string?>("--limits")
        {
            Description =
                "Between which clearances per side joints must lie, mm, such as 0.02/0.07: says whether each conforms.",
            HelpName = "LOW/HIGH",
        };
        var between = new Option<double?>("--between-prints")
        {
            Description =
                "Standard deviation of growth from print to print, mm, when you know it. Default: learnt from the files, "
                + "starting from 0.005.",
            HelpName = "MM",
        };
        var onePrint = new Option<bool>("--one-print")
        {
            Description = "The files are parts of one print, not a print each.",
        };
        var coupon = new Option<string?>("--coupon")
        {
            Description = "Only the readings of this coupon (A1 of A1/box1.outside.x). Default: each in turn.",
            HelpName = "ID",
        };
        var pixel = new Option<string?>("--pixel")
        {
            Description =
                "Pixel pitch, mm, or one for X and one for Y, of which the larger counts. Default: the object's.",
            HelpName = PixelText.Help,
        };
        var given = new Option<string[]>("--reading")
        {
            Description = "A reading instead of a file, such as box1.outside.x=8.02; may be repeated.",
            HelpName = "ID=VALUE",
        };
        given.CompletionSources.Add(context => printed.FeatureIds(context).Select(id => id + "="));
        var grey = new Option<bool>("--grey") { Description = "Edges are drawn in grey levels: no pixel phase error." };
        var thresholds = new Option<string?>("--thresholds")
        {
            Description = "Where binding, sliding and rattling begin, mm. Default: 0/0.02/0.07.",
            HelpName = "B/S/R",
        };
        var monteCarlo = new Option<bool>("--monte-carlo")
        {
            Description = "Propagate distributions (JCGM 101) instead of first order (JCGM 100).",
        };
        var budget = new Option<bool>("--budget") { Description = "Print what each uncertainty is made of." };
        var report = new Option<string?>("--report")
        {
            Description = "Write the answer as a page to file as well: plots, tables, exact inputs.",
            HelpName = "FILE.html",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "predict",
            """
            Say what clearance to expect in each joint, how sure that is, and what readings say about scale and growth.

            Exit codes: 0 answered, 2 bad use or readings that cannot be used.

            Example:
              calibgeom predict bench.csv --for 20/20.2
              calibgeom predict monday.csv tuesday.csv --limits 0.02/0.07
            """
        );
        command.Arguments.Add(paths);
        printed.AddTo(command);
        foreach (
            Option option in new Option[]
            {
                given,
                own,
                want,
                limits,
                between,
                onePrint,
                coupon,
                pixel,
                grey,
                thresholds,
                monteCarlo,
                budget,
                report,
                json,
            }
        )
            command.Options.Add(option);
        command.SetAction(parsed =>
            Run(
                io,
                new PredictRequest
                {
                    Paths = parsed.GetValue(paths) ?? [],
                    Find = digest => printed.Find(io, parsed, digest, parsed.GetValue(paths) ?? []),
                    For = parsed.GetValue(own),
                    Want = parsed.GetValue(want),
                    Limits = parsed.GetValue(limits),
                    BetweenPrints = parsed.GetValue(between),
                    OnePrint = parsed.GetValue(onePrint),
                    Coupon = parsed.GetValue(coupon),
                    Pixel = parsed.GetValue(pixel) is { } pitch ? PixelText.Parse(pitch, 0.005, 1) : null,
                    Given = parsed.GetValue(given) ?? [],
                    GreyLevels = parsed.GetValue(grey),
                    Thresholds = parsed.GetValue(thresholds),
                    MonteCarlo = parsed.GetValue(monteCarlo),
                    Budget = parsed.GetValue(budget),
                    Report = parsed.GetValue(report),
                    Json = parsed.GetValue(json),
                }
            )
        );
        return command;
    }

    private static int Run(CommandIo io, PredictRequest request)
    {
        if ((request.Paths.Count == 0) == (request.Given.Count == 0))
            throw new InputException(
                InputIds.Option,
                request.Given.Count == 0
                    ? "READINGS is missing. Name a readings file; \"calibgeom readings\" writes an empty one."
                    : "--reading stands for a file. Leave the file or --reading away."
            );
        if (request is { Want: not null, For: null })
            throw new InputException(InputIds.Option, "--want needs --for: say which peg and hole.");
        if (request.Report is { } page)
            RecordFile.RequireName(page);
        WantedJoint? joint = request.Joint();
        var files = new ReadingFiles(io, request.Paths);
        IReadOnlyList<ReadingSet> prints =
            request.Given.Count > 0 ? [ReadingsFile.Parse(request.Given)]
            : request.OnePrint ? [files.Together()]
            : files.Each();
        FoundObject source = request.Find(prints.Select(p => p.Digest).FirstOrDefault(d => d is not null));
        PredictionOptions options = request.Options(source.PixelPitch);
        var answers = PrintCoupons
            .Coupons(prints, request.Coupon)
            .Select(coupon => Answer(source, PrintCoupons.Of(prints, coupon), options, coupon, joint, request.Want))
            .Select(a => a with { Findings = [.. files.Findings, .. a.Findings] })
            .ToArray();
        if (request.Report is { } report)
        {
            using OutputSet outputs = io.NewOutputs();
            PredictRecord.Write(outputs, report, answers, source.Object.Features, request.Paths, request.Budget);
            io.Say($"wrote {report}");
        }
        if (request.Json)
        {
            PredictResult.Write(io.Out, answers, request.Budget);
            return ExitCode.Done;
        }
        foreach (PredictAnswer answer in answers)
            PredictReport.Write(io.Out, answer, request.Budget);
        io.SayCaution();
        return ExitCode.Done;
    }

    private static PredictAnswer Answer(
        FoundObject source,
        IReadOnlyList<ReadingSet> prints,
        PredictionOptions options,
        string coupon,
        WantedJoint? joint,
        double? want
    )
    {
        ClearancePrediction prediction = ClearancePrediction.Of(source.Object.Features, prints, options);
        try
        {
            OwnJoint? own = joint is null
                ? null
                : prediction.For(joint.Peg, joint.Hole, want, joint.Iso?.Limits ?? options.Limits);
            Finding[] findings =
            [
                .. source.Assumed is { } assumed ? [assumed] : Array.Empty<Finding>(),
                .. prediction.Findings,
                .. own?.Findings ?? [],
            ];
            return new PredictAnswer(coupon, prediction, own, joint?.Iso, findings);
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e, "--for or --want: ");
        }
    }
}
