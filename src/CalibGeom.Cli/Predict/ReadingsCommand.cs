using System.CommandLine;
using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary><c>calibgeom readings</c>: an empty readings file to fill in.</summary>
internal static class ReadingsCommand
{
    internal static Command Build(CommandIo io)
    {
        var spec = new Argument<string?>("SPEC")
        {
            Description = "A spec in JSON, or a .3mf that make has written. Without it: the preset.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var preset = new Option<string?>("--preset")
        {
            Description =
                "What holds where SPEC says nothing: standard (the default), witness, search, fine, coarse or limit.",
            HelpName = "NAME",
        };
        var features = new Option<string?>("--features")
        {
            Description = "A feature table instead of a spec.",
            HelpName = "CSV",
        };
        var output = new Option<string?>("--output", "-o")
        {
            Description = "Where to write; - (the default) is standard output.",
            HelpName = "OUT",
        };
        var sheet = new Option<string?>("--sheet")
        {
            Description =
                "Write the bench sheet instead: one HTML file for phone, screen and paper that saves the readings "
                + "file.",
            HelpName = "FILE.html",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope with the features to read." };
        var command = new Command(
            "readings",
            """
            Write an empty readings file for an object: one row a feature, with how to measure it. Fill in the values; repeat a row to repeat a reading.

            Example:
              calibgeom readings --preset standard -o bench.csv
              calibgeom readings --preset standard --sheet bench.html
            """
        );
        command.Arguments.Add(spec);
        foreach (Option option in new Option[] { preset, features, output, sheet, json })
            command.Options.Add(option);
        command.SetAction(parsed =>
            parsed.GetValue(sheet) is { } page
                ? Sheet(
                    io,
                    page,
                    parsed.GetValue(features) ?? parsed.GetValue(output),
                    SpecSource.Load(io, parsed.GetValue(spec), parsed.GetValue(preset), []),
                    parsed.GetValue(json)
                )
                : Run(
                    io,
                    FeatureSource.Load(
                        io,
                        parsed.GetValue(features),
                        parsed.GetValue(spec),
                        parsed.GetValue(preset) ?? (parsed.GetValue(features) is null ? "standard" : null),
                        null
                    ),
                    parsed.GetValue(output),
                    parsed.GetValue(json)
                )
        );
        return command;
    }

    private static int Sheet(CommandIo io, string page, string? beside, SpecSource source, bool json)
    {
        if (beside is not null)
            throw new InputException("--sheet draws the object itself: leave --features and -o away, name a spec.");
        TestObject made = SheetFile.Build(source);
        using var files = new OutputSet();
        SheetFile.Add(files, page, made, source.Name);
        files.Commit();
        if (json)
            Envelope.Write(
                io.Out,
                "readings",
                [],
                new JsonObject { ["digest"] = made.Features.Digest, ["file"] = page }
            );
        io.Error.WriteLine($"wrote {page}");
        io.Error.WriteLine(Caution.Text);
        return ExitCode.Done;
    }

    private static int Run(CommandIo io, FeatureSource source, string? output, bool json)
    {
        string text = ReadingsFile.Template(source.Features);
        if (output is not null and not "-")
        {
            using var files = new OutputSet();
            files.Add(output, stream => stream.Write(Encoding.UTF8.GetBytes(text)));
            files.Commit();
            io.Error.WriteLine($"wrote {output}");
        }
        if (json)
            Envelope.Write(
                io.Out,
                "readings",
                [],
                new JsonObject
                {
                    ["digest"] = source.Features.Digest,
                    ["features"] = new JsonArray(source.Features.Select(f => (JsonNode)f.Id.ToString()).ToArray()),
                }
            );
        else if (output is null or "-")
            io.Out.Write(text);
        io.Error.WriteLine(Caution.Text);
        return ExitCode.Done;
    }
}
