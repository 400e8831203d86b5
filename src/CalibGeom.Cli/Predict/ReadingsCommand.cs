using System.CommandLine;
using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Objects;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary><c>calibgeom readings</c>: an empty readings sheet to fill in.</summary>
internal static class ReadingsCommand
{
    internal static Command Build(CommandIo io)
    {
        var described = new ObjectOption(
            "the one whose .object.json lies in the current folder, else the preset standard"
        );
        var all = new Option<bool>("--all")
        {
            Description = "A row for everything, also what predict and tune make little of.",
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
            Write an empty readings sheet for an object, in the order of work: from top to bottom nothing spoils what comes later.

            Fill in the values; what stays empty is left out. Repeat a row to repeat a reading. A sheet that holds values is never written over.

            Example:
              calibgeom readings --object standard -o bench.csv
              calibgeom readings --object standard --sheet bench.html
            """
        );
        described.AddTo(command);
        foreach (Option option in new Option[] { all, output, sheet, json })
            command.Options.Add(option);
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(sheet) is { } page)
                return Sheet(io, page, parsed.GetValue(output), Object(io, described, parsed), parsed.GetValue(json));
            KnownObject known = Object(io, described, parsed);
            string text = ReadingsSheet.Of(known.Features, parsed.GetValue(all));
            string? path = parsed.GetValue(output);
            Write(io, path, text);
            if (parsed.GetValue(json))
                Envelope.Write(io.Out, "readings", [], Describe(known));
            else if (path is null or "-")
                io.Out.Write(text);
            io.SayCaution();
            return ExitCode.Done;
        });
        return command;
    }

    private static int Sheet(CommandIo io, string page, string? beside, KnownObject known, bool json)
    {
        if (beside is not null)
            throw new InputException(InputIds.Option, "--sheet draws the object itself: leave -o away.");
        if (known.File is not { Coupons.Count: 0 } file)
            throw new InputException(
                InputIds.Option,
                $"--sheet draws an object that stands alone; {known.Name} does not. Name its spec or preset."
            );
        TestObject made = SheetFile.Build(new SpecSource(file.Name, file.Spec));
        using var files = io.NewOutputs();
        SheetFile.Add(files, page, made, file.Name);
        files.Commit();
        if (json)
            Envelope.Write(
                io.Out,
                "readings",
                [],
                new JsonObject { ["digest"] = made.Features.Digest, ["file"] = page }
            );
        io.Say($"wrote {page}");
        io.SayCaution();
        return ExitCode.Done;
    }

    private static KnownObject Object(CommandIo io, ObjectOption described, ParseResult parsed)
    {
        if (described.IsGiven(parsed) || Only() is not { } path)
            return described.Load(io, parsed, "standard");
        KnownObject known = ObjectFinder.Read(path, []);
        io.Say($"for the object of {Path.GetFileName(path)}");
        return known;
    }

    /// <exception cref="InputException">There are several.</exception>
    private static string? Only()
    {
        try
        {
            return ObjectFinder.OnlyFile(".");
        }
        catch (InputException e)
        {
            throw new InputException(e.Id, $"{e.Message} Write {ObjectOption.Name} FILE.", e);
        }
    }

    private static void Write(CommandIo io, string? output, string text)
    {
        if (output is null or "-")
            return;
        using var files = io.NewOutputs();
        files.Add(output, stream => stream.Write(Encoding.UTF8.GetBytes(text)));
        files.Commit();
        io.Say($"wrote {output}");
    }

    private static JsonObject Describe(KnownObject known) =>
        new()
        {
            ["digest"] = known.Digest,
            ["features"] = new JsonArray(known.Features.Select(f => (JsonNode)(string)f.Id).ToArray()),
        };
}
