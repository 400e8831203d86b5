using System.CommandLine;
using System.Globalization;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Calipers;

/// <summary><c>calibgeom caliper add</c>: more readings in a caliper record.</summary>
internal static class CaliperAddCommand
{
    internal static Command Build(CommandIo io)
    {
        var path = new Argument<string>("RECORD") { Description = "The record; begun when it does not exist." };
        var readings = new Argument<string[]>("READING")
        {
            Description = "What the display showed, mm; one or more.",
            Arity = ArgumentArity.OneOrMore,
        };
        Option<string?> jaw = Text("--jaw", "JAW", "The jaws: outside, inside or depth.", required: true),
            gauge = Text("--gauge", "MM", "Size of the gauge block, pin or ring that was read, mm."),
            part = Text("--part", "NAME", "The part of a repeatability study, where no gauge was read."),
            person = Text("--person", "NAME", "Who read it."),
            date = Text("--date", "DAY", "The day, such as 2026-03-01. Default: today."),
            name = Text("--name", "NAME", "The caliper's name, where the record begins.");
        var valid = new Option<int?>("--valid")
        {
            Description = "For how many days after its last gauge a record counts that begins. Default 365.",
            HelpName = "DAYS",
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope instead of text." };
        var command = new Command(
            "add",
            """
            Add readings of one gauge, or of one part of a repeatability study, to a record and say what it tells now. Nothing that stands in it is rewritten.

            Exit codes: 0 added, 2 bad use or a record that cannot be used; then nothing is added.

            Example:
              calibgeom caliper add cal.caliper.csv 10.01 10.01 10.02 --jaw outside --gauge 10
              calibgeom caliper add cal.caliper.csv 8.02 8.03 --jaw outside --part peg --person Ada
            """
        );
        command.Arguments.Add(path);
        command.Arguments.Add(readings);
        foreach (Option option in new Option[] { jaw, gauge, part, person, date, name, valid, json })
            command.Options.Add(option);
        command.SetAction(parsed =>
            new CaliperAddRun(io, parsed.GetValue(path)!)
            {
                Readings = parsed.GetValue(readings)!,
                Jaw = parsed.GetValue(jaw)!,
                Gauge = parsed.GetValue(gauge),
                Part = parsed.GetValue(part) ?? "",
                Person = parsed.GetValue(person) ?? "",
                Date = parsed.GetValue(date) ?? io.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                Name = parsed.GetValue(name),
                Valid = parsed.GetValue(valid),
                Json = parsed.GetValue(json),
            }.Run()
        );
        return command;
    }

    private static Option<string?> Text(string name, string help, string description, bool required = false) =>
        new(name)
        {
            Description = description,
            HelpName = help,
            Required = required,
        };
}
