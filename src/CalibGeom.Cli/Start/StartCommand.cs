using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Tune;
using CalibGeom.Verification.Tuning.Beginnings;

namespace CalibGeom.Cli.Start;

/// <summary><c>calibgeom start</c>: with what to print a resin first.</summary>
internal static class StartCommand
{
    internal static Command Build(CommandIo io)
    {
        var maker = Number("--maker-time", "Exposure that the resin's maker names, s.", "S");
        var makerLayer = Number(
            "--maker-layer",
            "Layer height that this exposure is meant for, mm; default: the same.",
            "MM"
        );
        var log = new Option<string?>("--log")
        {
            Description = "The log of a neighbour: a resin of the same kind, or another layer height.",
            HelpName = "LOG",
        };
        var layer = new Option<double>("--layer")
        {
            Description = "Layer height to print with, mm. Default 0.05.",
            HelpName = "MM",
            DefaultValueFactory = _ => ProcessDefaults.LayerHeight,
        };
        var quoted = new QuotedOptions();
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "start",
            """
            Say with what exposure, rest and base exposure to print a resin first, why, and how unsure that is.

            Give one of: the maker's time, a working curve with the irradiance of the printer, or the log of a neighbour.

            Example:
              calibgeom start --maker-time 2.5 --layer 0.05
            """
        );
        foreach (
            Option option in new Option[]
            {
                maker,
                makerLayer,
                quoted.Depth,
                quoted.Dose,
                quoted.Irradiance,
                log,
                layer,
                json,
            }
        )
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            try
            {
                double height = parsed.GetValue(layer);
                StartAdvice advice = (parsed.GetValue(maker), quoted.Read(parsed), parsed.GetValue(log)) switch
                {
                    ({ } time, null, null) => StartAdvice.OfMaker(time, height, parsed.GetValue(makerLayer)),
                    (null, { } curve, null) => StartAdvice.OfCurve(curve, height),
                    (null, null, { } path) => StartAdvice.OfNeighbour(LogInput.Read(io, path).Trials, height),
                    _ => throw new InputException(
                        InputIds.Option,
                        "Give one beginning: --maker-time S, or --dp, --ec and --irradiance, or --log FILE."
                    ),
                };
                if (parsed.GetValue(json))
                    Envelope.Write(io.Out, "start", [], Json(advice));
                else
                {
                    Write(io.Out, advice);
                    io.SayCaution();
                }
                return ExitCode.Done;
            }
            catch (ArgumentException e)
            {
                throw InputException.Because(InputIds.Option, e);
            }
        });
        return command;
    }

    private static void Write(TextWriter writer, StartAdvice a)
    {
        writer.WriteLine(
            Text($"Start with {a.Settings.Time:0.##} s exposure and {a.Settings.Rest:0.#} s rest, no edge offset.")
        );
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"The right exposure lies between {a.Range.Low:0.0#} and "
                    + $"{a.Range.High:0.0#} s in 95 % of cases: a start, never a setting."
            )
        );
        writer.WriteLine(Text($"Base: {a.BaseLayers} layers of {a.BaseTime:0.#} s."));
        writer.WriteLine($"Why: {a.Reason}.");
        writer.WriteLine("Nothing on the plate: double the light, and look at base exposure, level and plate.");
    }

    private static JsonObject Json(StartAdvice a) =>
        new()
        {
            ["time"] = a.Settings.Time,
            ["low"] = a.Range.Low,
            ["high"] = a.Range.High,
            ["rest"] = a.Settings.Rest,
            ["edgeOffset"] = 0,
            ["baseLayers"] = a.BaseLayers,
            ["baseTime"] = a.BaseTime,
            ["reason"] = a.Reason,
        };

    private static Option<double?> Number(string name, string description, string unit) =>
        new(name) { Description = description, HelpName = unit };

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
