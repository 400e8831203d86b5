using System.CommandLine;
using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Tune;

/// <summary><c>calibgeom tune add</c>: one more trial in the log.</summary>
internal static class TuneAddCommand
{
    internal static Command Build(CommandIo io)
    {
        var readings = new Argument<string>("READINGS")
        {
            Description = "Readings of the print, CSV or JSON; - is standard input.",
        };
        var log = new Option<string>("--log")
        {
            Description = "The log to append to; made when it does not exist.",
            HelpName = "FILE",
            Required = true,
        };
        var time = new Option<double>("--time")
        {
            Description = "Exposure of a normal layer, s.",
            HelpName = "S",
            Required = true,
        };
        var rest = new Option<double>("--rest")
        {
            Description = "Rest before each exposure, s.",
            HelpName = "S",
            Required = true,
        };
        var offset = new Option<double>("--edge-offset")
        {
            Description = "Edge offset entered in the slicer, mm, positive = solids larger. Default 0.",
            HelpName = "MM",
        };
        var layer = new Option<double?>("--layer")
        {
            Description = "Layer height, mm; default: the spec's, else 0.05.",
            HelpName = "MM",
        };
        var baseLayers = new Option<int>("--base-layers")
        {
            Description = "Number of base layers. Default 5.",
            HelpName = "N",
            DefaultValueFactory = _ => 5,
        };
        var baseTime = new Option<double>("--base-time")
        {
            Description = "Exposure of a base layer, s. Default 25.",
            HelpName = "S",
            DefaultValueFactory = _ => 25,
        };
        var lift = new Option<double>("--lift")
        {
            Description = "What a layer takes besides exposure and rest, s. Default 7.",
            HelpName = "S",
            DefaultValueFactory = _ => 7,
        };
        var start = new Option<double?>("--temperature-start")
        {
            Description = "Vat temperature at the start, degrees C.",
            HelpName = "C",
        };
        var end = new Option<double?>("--temperature-end")
        {
            Description = "Vat temperature at the end, degrees C.",
            HelpName = "C",
        };
        var resin = new Option<string>("--resin")
        {
            Description = "The resin's name.",
            HelpName = "NAME",
            DefaultValueFactory = _ => "",
        };
        var printer = new Option<string>("--printer")
        {
            Description = "The printer's name.",
            HelpName = "NAME",
            DefaultValueFactory = _ => "",
        };
        var grey = new Option<bool>("--grey-levels") { Description = "The slicer wrote grey-level edges." };
        var orientation = new Option<int>("--orientation")
        {
            Description = "How the object lay, 0 or 90 degrees. Default 0.",
            HelpName = "DEG",
        };
        var date = new Option<string?>("--date")
        {
            Description = "Day of the print, such as 2026-03-01.",
            HelpName = "DAY",
        };
        var spec = new Option<string?>("--spec") { Description = "The spec that was printed.", HelpName = "SPEC" };
        var preset = new Option<string?>("--preset")
        {
            Description =
                "The preset that was printed. Default: the one whose digest the readings name, else standard.",
            HelpName = "NAME",
        };
        var coupon = new Option<string?>("--coupon")
        {
            Description = "Only the readings of this coupon (A1 of A1/box1.outside.x).",
            HelpName = "ID",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "add",
            """
            Append one trial to a log; nothing that stands in it is rewritten.

            Example:
              calibgeom tune add readings.csv --log demo-grey.jsonl --time 2.5 --rest 1 --resin "Demo grey" --printer bench
            """
        );
        command.Arguments.Add(readings);
        foreach (
            Option option in new Option[]
            {
                log,
                time,
                rest,
                offset,
                layer,
                baseLayers,
                baseTime,
                lift,
                start,
                end,
                resin,
                printer,
                grey,
                orientation,
                date,
                spec,
                preset,
                coupon,
                json,
            }
        )
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            ReadingSet set = Coupon(Read(io, parsed.GetValue(readings)!), parsed.GetValue(coupon));
            TestObject made = Printed(io, set, parsed.GetValue(spec), parsed.GetValue(preset));
            Trial trial;
            try
            {
                var settings = new ExposureSettings(
                    parsed.GetValue(time),
                    parsed.GetValue(rest),
                    parsed.GetValue(offset)
                );
                var conditions = new TrialConditions(
                    parsed.GetValue(layer) ?? made.Spec.Process?.LayerHeight ?? 0.05,
                    parsed.GetValue(resin)!,
                    parsed.GetValue(printer)!,
                    set.State ?? PartState.Dry,
                    parsed.GetValue(grey),
                    parsed.GetValue(orientation),
                    parsed.GetValue(start),
                    parsed.GetValue(end)
                );
                trial = TrialReadings.ToTrial(made, set, settings, conditions) with
                {
                    Cycle = new LayerCycle(
                        parsed.GetValue(baseLayers),
                        parsed.GetValue(baseTime),
                        parsed.GetValue(lift)
                    ),
                    Date = parsed.GetValue(date) is { } day ? Day(day) : null,
                };
            }
            catch (ArgumentException e)
            {
                throw new InputException(e.Message.Split(" (Parameter")[0], e);
            }
            return Append(io, parsed.GetValue(log)!, trial, TrialReadings.FindingsOf(made, set), parsed.GetValue(json));
        });
        return command;
    }

    private static TestObject Printed(CommandIo io, ReadingSet readings, string? spec, string? preset)
    {
        Preset? named =
            (spec ?? preset) is null && readings.Digest is { } digest
                ? Presets.All.FirstOrDefault(p => SpecDigest.Of(p.Spec) == digest)
                : null;
        return TestObjectBuilder.Build(SpecSource.Load(io, spec, preset ?? named?.Name, []).Spec);
    }

    private static ReadingSet Coupon(ReadingSet readings, string? coupon)
    {
        if (coupon is null)
            return readings;
        return readings.Coupons.Contains(coupon)
            ? readings.ForCoupon(coupon)
            : throw new InputException(
                $"There are no readings of coupon {coupon}. The readings hold "
                    + string.Join(", ", readings.Coupons.Select(c => c.Length > 0 ? c : "readings without a coupon"))
                    + "."
            );
    }

    private static int Append(CommandIo io, string path, Trial trial, IReadOnlyList<Finding> findings, bool json)
    {
        int count = TrialLog.Append(path, trial);
        if (json)
            Envelope.Write(
                io.Out,
                "tune add",
                findings,
                new System.Text.Json.Nodes.JsonObject
                {
                    ["log"] = path,
                    ["trials"] = count,
                    ["trial"] = System.Text.Json.Nodes.JsonNode.Parse(TrialLog.ToLine(trial)),
                }
            );
        else
        {
            io.Out.WriteLine($"Trial {count} ({trial.Settings}) added to {path}.");
            FindingText.Write(io.Out, findings);
        }
        return ExitCode.Done;
    }

    private static ReadingSet Read(CommandIo io, string path)
    {
        if (path != "-" && !File.Exists(path))
            throw new InputException(
                $"There are no readings {path}. Name a CSV or JSON file, or - for standard input."
            );
        using Stream stream = path == "-" ? io.OpenInput() : File.OpenRead(path);
        return ReadingsFile.Read(stream, path == "-" ? "standard input" : Path.GetFileName(path));
    }

    private static DateOnly Day(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? day
            : throw new InputException($"--date {text} is no day. Write it as 2026-03-01.");
}
