using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Objects;
using CalibGeom.Pictures.Views;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Draw;

/// <summary><c>calibgeom draw</c>: a drawing for the workshop, or a shaded view with names.</summary>
internal static class DrawCommand
{
    private const string Views = "top, front, corner, or azimuth/elevation in degrees such as -60/35";

    internal static Command Build(CommandIo io)
    {
        var described = new ObjectOption("the preset standard");
        var output = new Option<string?>("--output", "-o")
        {
            Description = "Where to write: .svg, .png or .pdf. Default: NAME.svg here.",
            HelpName = "FILE",
        };
        var paper = new Option<string?>("--paper")
        {
            Description = "The paper it is true to scale on: a4 (the default) or letter.",
            HelpName = "NAME",
        };
        var view = new Option<string?>("--view")
        {
            Description = $"Draw the object shaded, with the names of its parts, seen from {Views}.",
            HelpName = "VIEW",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "draw",
            """
            Draw a test object: from above and the front, cut through, with sizes, names, the map of columns and a title block; or shaded, with --view.

            Exit codes: 0 drawn, 1 the design cannot work, 2 bad use or a spec that cannot be read.

            Example:
              calibgeom draw --object standard --paper letter -o standard.pdf
            """
        );
        described.AddTo(command);
        foreach (Option option in new Option[] { output, paper, view, json })
            command.Options.Add(option);
        command.SetAction(parsed =>
            Run(
                io,
                described.Spec(io, parsed, "standard"),
                parsed.GetValue(output),
                parsed.GetValue(paper),
                parsed.GetValue(view),
                parsed.GetValue(json)
            )
        );
        return command;
    }

    private static int Run(CommandIo io, SpecSource source, string? output, string? paper, string? view, bool json)
    {
        if (view is not null && paper is not null)
            throw new InputException(InputIds.Option, "A shaded view has no paper; leave --view or --paper away.");
        string path = output ?? $"{source.Name}.svg";
        Drawing.RequireName(path);
        Paper sheet = Paper.Parse(paper ?? "a4");
        ViewDirection? direction = view is null ? null : Direction(view);
        TestObject made = TestObject.Of(source.Spec);
        if (!made.HasErrors)
        {
            Drawing drawing = direction is null
                ? ObjectDrawing.Draw(made, source.Name, sheet)
                : NumberedView.Draw(made, source.Name, direction);
            using var files = io.NewOutputs();
            files.Add(path, stream => drawing.Write(path, stream));
            files.Commit();
        }
        if (json)
            Envelope.Write(
                io.Out,
                "draw",
                made.Findings,
                new JsonObject { ["digest"] = SpecDigest.Of(made.Spec), ["file"] = made.HasErrors ? null : path }
            );
        else
            FindingText.Write(io.Out, made.Findings.Where(f => f.Severity == Severity.Error));
        if (made.HasErrors)
            io.Error.WriteLine("The design cannot work as it stands; nothing was drawn.");
        else
            io.Say($"wrote {path}");
        return made.HasErrors ? ExitCode.Finding : ExitCode.Done;
    }

    /// <exception cref="InputException">It is no view.</exception>
    private static ViewDirection Direction(string text)
    {
        switch (text)
        {
            case "top":
                return ViewDirection.Top;
            case "front":
                return ViewDirection.Front;
            case "corner":
                return ViewDirection.Corner;
        }
        string[] parts = text.Split('/');
        if (parts.Length == 2 && Angle(parts[0], 360) is { } azimuth && Angle(parts[1], 90) is { } elevation)
            return new ViewDirection(azimuth, elevation);
        throw new InputException(InputIds.Option, $"--view is \"{text}\"; it is {Views}.");
    }

    private static double? Angle(string text, double most) =>
        double.TryParse(
            text,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out double angle
        )
        && Math.Abs(angle) <= most
            ? angle
            : null;
}
