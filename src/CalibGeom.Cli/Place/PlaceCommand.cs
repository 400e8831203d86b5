using System.CommandLine;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Place;

/// <summary><c>calibgeom place</c>: a coupon beside production parts.</summary>
internal static class PlaceCommand
{
    internal static Command Build(CommandIo io)
    {
        var parts = new Argument<string[]>("PART")
        {
            Description =
                "Production parts as they lie on the plate: STL, OBJ or 3MF in mm; - reads one from standard input. "
                + "A ladder needs none.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var plate = Text("--plate", PlateText.Help, "The plate in mm. Default: process.plate of the spec.");
        var margin = Text("--margin", "MM", "Width of a strip along the plate's edges that stays empty. Default 0.");
        var coupon = new ObjectOption("the preset witness");
        var at = Text(
            "--at",
            "WISH",
            "Where: near (the parts; the default), corner, X,Y (nearest to a point), or map (several coupons "
                + "spread over the plate)."
        );
        var count = Text("--count", "N", "How many coupons a map or a ladder has, 1 to 50. Default 5.");
        var ladder = Text(
            "--ladder",
            "S:S",
            "An exposure ladder: coupons spread over the plate, each marked with its own exposure time between these "
                + "two, for machines or slicers that take an exposure per object or area. Coupon: the preset search."
        );
        var gap = Text("--gap", "MM", "The least distance to parts, margin and other coupons, 0.1 to 100. Default 2.");
        var pitch = Text(
            "--pixel",
            "P[,Q]",
            "Pixel pitch, mm, or one for X and one for Y: coupons move by whole pixels, and are turned only where both "
                + "are the same. Default: process.pixelPitch of the spec, else any place."
        );
        var under = Flag("--under", "Let the coupon stand under parts where there is height for it and the gap.");
        var lenient = Flag("--lenient", "Read what is whole of a damaged part, and say what is missing.");
        var centre = Flag(
            "--centre",
            "The slicer will centre the parts: the plate is taken round their middle, the coupon stays in their "
                + "coordinates."
        );
        var origin = Text("--origin", "centre|corner", "Where X = Y = 0 is on the plate. Default centre.");
        var stand = Text(
            "--base",
            "parts|zero",
            "At which height the coupon stands: the parts' lowest point (the default) or z = 0."
        );
        var alone = Flag("--alone", "Write the coupon alone, in plate coordinates.");
        var picture = Text("--picture", "FILE.svg|FILE.png", "Also draw the plate from above.");
        var output = new Option<string>("--output", "-o")
        {
            Description =
                "What to write: .stl (one mesh; the parts' triangles byte for byte) or .3mf (named objects); X.features.csv "
                + "and X.object.json stand beside it. - writes STL to standard output.",
            HelpName = "OUT",
            Required = true,
        };
        var json = Flag("--json", "Print one JSON envelope instead of text.");
        var command = new Command(
            "place",
            """
            Place a witness coupon beside production parts, so that it costs no plate of its own. The parts' triangles are not touched.

            Exit codes: 0 placed, 1 no room (nothing is written) or a coupon that cannot work, 2 bad use or a part that cannot be read.

            Example:
              calibgeom place holder.stl --plate 150x90 --gap 2 --picture plate.svg -o plate.stl
            """
        );
        command.Arguments.Add(parts);
        coupon.AddTo(command);
        foreach (
            Option option in new Option[]
            {
                plate,
                margin,
                at,
                count,
                ladder,
                gap,
                pitch,
                under,
                lenient,
                centre,
                origin,
                stand,
                alone,
                picture,
                output,
                json,
            }
        )
            command.Options.Add(option);
        command.SetAction(parsed =>
            PlaceRun.Run(
                io,
                new PlaceRequest
                {
                    Parts = parsed.GetValue(parts) ?? [],
                    Plate = parsed.GetValue(plate),
                    Margin = parsed.GetValue(margin),
                    Source = coupon.Spec(io, parsed, parsed.GetValue(ladder) is null ? "witness" : "search"),
                    SpecPath = coupon.PathOf(parsed),
                    SpecTakesInput = coupon.TakesInput(parsed),
                    At = parsed.GetValue(at) ?? (parsed.GetValue(ladder) is null ? "near" : "map"),
                    Count = parsed.GetValue(count),
                    Ladder = parsed.GetValue(ladder),
                    Gap = parsed.GetValue(gap),
                    PixelPitch = parsed.GetValue(pitch),
                    Under = parsed.GetValue(under),
                    Lenient = parsed.GetValue(lenient),
                    Centre = parsed.GetValue(centre),
                    Origin = parsed.GetValue(origin),
                    Base = parsed.GetValue(stand),
                    Alone = parsed.GetValue(alone),
                    Picture = parsed.GetValue(picture),
                    Output = parsed.GetValue(output)!,
                    Json = parsed.GetValue(json),
                }
            )
        );
        return command;
    }

    private static Option<string?> Text(string name, string help, string description) =>
        new(name) { Description = description, HelpName = help };

    private static Option<bool> Flag(string name, string description) => new(name) { Description = description };
}
