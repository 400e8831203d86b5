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
        var layer = new Option<double?>("--layer")
        {
            Description =
                "Layer height, mm. Default: that of the object, or of the spec that a 3MF carries, else 0.05.",
            HelpName = "MM",
        };
        var pixel = new Option<string?>("--pixel")
        {
            Description =
                "Pixel pitch, mm, or one for X and one for Y. Default: that of the object, or of the spec that a 3MF "
                + "carries, else 0.04.",
            HelpName = PixelText.Help,
        };
        var plate = new Option<string?>("--plate")
        {
            Description = "Plate, mm: a mesh larger than it is an error.",
            HelpName = PlateText.Help,
        };
        var against = new Option<bool>("--against")
        {
            Description =
                "Check that the mesh has the sizes of its object: the one named, else the X.object.json beside it.",
        };
        var described = new ObjectOption("with --against, X.object.json beside the mesh");
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
              calibgeom inspect part.stl --layer 0.05 --pixel 0.04
            """
        );
        command.Arguments.Add(files);
        described.AddTo(command);
        foreach (Option option in new Option[] { layer, pixel, plate, against, lenient, json })
            command.Options.Add(option);
        command.SetAction(parsed =>
            new InspectRun(
                io,
                new InspectRequest(
                    parsed.GetValue(files)!,
                    parsed.GetValue(layer),
                    parsed.GetValue(pixel),
                    parsed.GetValue(plate),
                    parsed.GetValue(against) || described.IsGiven(parsed)
                        ? path => described.Against(io, parsed, path)
                        : null,
                    parsed.GetValue(lenient),
                    parsed.GetValue(json)
                )
            ).Run()
        );
        return command;
    }
}
