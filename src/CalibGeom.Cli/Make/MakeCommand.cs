using System.CommandLine;
using CalibGeom.Cli.Shared;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Make;

/// <summary><c>calibgeom make</c>: from a spec to a mesh file and a feature table.</summary>
internal static class MakeCommand
{
    internal static Command Build(CommandIo io)
    {
        var described = new ObjectOption("the preset standard");
        var output = new Option<string?>("--output", "-o")
        {
            Description =
                "Where to write the mesh: .stl, .3mf (which carries the spec) or .obj. X.features.csv "
                + "(what to measure) and X.object.json (what it is, for every later command) stand beside it. - writes "
                + "an STL alone to standard output. Default: NAME.stl here.",
            HelpName = "OUT",
        };
        var sheet = new Option<string?>("--sheet")
        {
            Description = "Write the bench sheet as well: one HTML file for phone, screen and paper.",
            HelpName = "FILE.html",
        };
        var picture = new Option<string?>("--picture")
        {
            Description = "Write a shaded view with the names of the parts as well: .svg, .png or .pdf.",
            HelpName = "FILE",
        };
        var mark = new Option<int>("--mark")
        {
            Description =
                "Raise N small dots, 0 to 6, on the plinth and on every box, so that loose boxes from several prints are told "
                + "apart. Digest and sizes stay.",
            HelpName = "N",
        };
        var sweep = new Option<string[]>("--sweep")
        {
            Description =
                "Make a family: every value of a parameter, as FROM:TO:STEP or VALUE,VALUE; repeated, every combination. "
                + "OUT then holds {n} for the number; an index stands beside the meshes as CSV and JSON, and a run that was "
                + "stopped goes on where it was.",
            HelpName = "NAME=VALUES",
        };
        sweep.CompletionSources.Add(_ => SpecJson.ParameterNames.Select(n => n + "="));
        var shard = new Option<string?>("--shard")
        {
            Description = "Make one part of a family, such as 3/16; several machines share it so.",
            HelpName = "PART/PARTS",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var check = new Option<bool>("--check") { Description = "Check the design and write nothing." };
        var command = new Command(
            "make",
            """
            Make a test object: a mesh in millimetres, a table of what to measure on it, and a file that says what it is.

            Exit codes: 0 made (warnings allowed), 1 the design cannot work, 2 bad use or a spec that cannot be read.

            Example:
              calibgeom make --object standard --set title="Demo grey" --set columns.height=8 -o demo.stl
            """
        );
        described.AddTo(command);
        foreach (Option option in new Option[] { output, mark, sheet, picture, sweep, shard, json, check })
            command.Options.Add(option);
        command.SetAction(parsed =>
            MakeRun.Run(
                io,
                new MakeRequest
                {
                    Source = described.Spec(io, parsed, "standard"),
                    Output = parsed.GetValue(output),
                    Sheet = parsed.GetValue(sheet),
                    Picture = parsed.GetValue(picture),
                    Mark = parsed.GetValue(mark),
                    Sweeps = parsed.GetValue(sweep) ?? [],
                    Shard = parsed.GetValue(shard),
                    Json = parsed.GetValue(json),
                    Check = parsed.GetValue(check),
                }
            )
        );
        return command;
    }
}
