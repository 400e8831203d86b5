using System.CommandLine;
using CalibGeom.Cli.Place;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Inspect;

/// <summary><c>calibgeom inspect</c>: a verdict on any mesh before resin is spent on it.</summary>
internal static class InspectCommand
{
    internal static Command Build(CommandIo io)
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Meshes to inspect: STL, OBJ or 3MF; - reads standard input.",
            Arity = ArgumentArity.OneOrMore,
        };
        var layer = new Option<double>("--layer")
        {
            Description = "Layer height, mm.",
            HelpName = "MM",
            DefaultValueFactory = _ => 0.05,
        };
        var pixel = new Option<double>("--pixel")
        {
            Description = "Pixel pitch, mm.",
            HelpName = "MM",
            DefaultValueFactory = _ => 0.035,
        };
        var plate = new Option<string?>("--plate")
        {
            Description = "Plate, mm: a mesh larger than it is an error.",
            HelpName = PlateText.Help,
        };
        var against = new Option<string?>("--against")
        {
            Description = "A spec (JSON, or a .3mf that make has written): check that the mesh has its sizes.",
            HelpName = "SPEC",
        };
        var lenient = new Option<bool>("--lenient")
        {
            Description = "Read what is whole of a damaged file and say what was left out.",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "inspect",
            """
            Say whether a mesh can be printed as it is: its surface, then layer by layer as the printer sees it.

            Exit codes: 0 nothing but notes, 1 an error or warning was found, 2 bad use or a file that cannot be read.

            Example:
              calibgeom inspect part.stl --layer 0.05 --pixel 0.035
            """
        );
        command.Arguments.Add(files);
        foreach (Option option in new Option[] { layer, pixel, plate, against, lenient, json })
            command.Options.Add(option);
        command.SetAction(parsed =>
            InspectRun.Run(
                io,
                new InspectRequest(
                    parsed.GetValue(files)!,
                    parsed.GetValue(layer),
                    parsed.GetValue(pixel),
                    parsed.GetValue(plate),
                    parsed.GetValue(against),
                    parsed.GetValue(lenient),
                    parsed.GetValue(json)
                )
            )
        );
        return command;
    }
}
