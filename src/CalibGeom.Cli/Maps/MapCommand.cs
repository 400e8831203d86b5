using System.CommandLine;
using CalibGeom.Cli.Place;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Maps;

namespace CalibGeom.Cli.Maps;

/// <summary><c>calibgeom map</c>: how even the light is over the plate.</summary>
internal static class MapCommand
{
    internal static Command Build(CommandIo io)
    {
        var inputs = new Argument<string[]>("LOG|READINGS")
        {
            Description =
                "The log with the coupons of one print, each with its place (- is standard input), or the readings of the "
                + "print: one file, or a file a coupon.",
            Arity = ArgumentArity.OneOrMore,
        };
        var printed = new ObjectOption("the one whose digest the readings name, beside them or in the current folder");
        var plate = new Option<string>("--plate")
        {
            Description = "Size of the plate, mm. Default 150x90.",
            HelpName = PlateText.Help,
            DefaultValueFactory = _ => "150x90",
        };
        var tolerance = new Option<double>("--tolerance")
        {
            Description = "How far a clearance may differ over the plate, mm per side. Default 0.012.",
            HelpName = "MM",
            DefaultValueFactory = _ => MapOptions.Default.Tolerance,
        };
        var light = new Option<double>("--light-tolerance")
        {
            Description = "How far the light may differ, per cent. Default 10.",
            HelpName = "PERCENT",
            DefaultValueFactory = _ => 100 * MapOptions.Default.LightTolerance,
        };
        var joint = new Option<string?>("--for")
        {
            Description = "A peg and hole of your own, mm: what clearance to expect.",
            HelpName = "PEG/HOLE",
        };
        var at = new Option<string?>("--at")
        {
            Description = "Where that joint stands, mm from the plate's centre. Default: anywhere.",
            HelpName = "X,Y",
        };
        var grid = new Option<string?>("--grid")
        {
            Description = "Write light and coverage mask as numbers over the plate (CSV).",
            HelpName = "FILE",
        };
        var plot = new Option<string?>("--plot")
        {
            Description = "Draw the plate with what each place reads (.svg or .png).",
            HelpName = "FILE",
        };
        var report = new Option<string?>("--report")
        {
            Description = "Write the answer as a page to file as well: picture, table, exact inputs.",
            HelpName = "FILE.html",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "map",
            """
            Say how even the light is over the plate, from coupons of one print at different places.

            Exit codes: 0 answered, 2 bad use or a log that cannot be read.

            Example:
              calibgeom map plate.jsonl --plate 150x90 --plot map.svg --for 20/20.2 --at 40,20
              calibgeom map plate.readings.csv --object plate.object.json
            """
        );
        command.Arguments.Add(inputs);
        printed.AddTo(command);
        foreach (Option option in new Option[] { plate, tolerance, light, joint, at, grid, plot, report, json })
            command.Options.Add(option);
        command.SetAction(parsed =>
            new MapRun(io)
            {
                Inputs = parsed.GetValue(inputs)!,
                Find = digest => printed.Find(io, parsed, digest, parsed.GetValue(inputs)!),
                Plate = PlateText.Parse(parsed.GetValue(plate)!),
                Tolerance = parsed.GetValue(tolerance),
                LightTolerance = parsed.GetValue(light),
                Joint = MapJoint.Read(parsed.GetValue(joint), parsed.GetValue(at)),
                Grid = parsed.GetValue(grid),
                Plot = parsed.GetValue(plot),
                Report = parsed.GetValue(report),
                Json = parsed.GetValue(json),
            }.Run()
        );
        return command;
    }
}
