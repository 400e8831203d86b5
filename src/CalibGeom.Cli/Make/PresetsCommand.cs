using System.CommandLine;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Make;

/// <summary><c>calibgeom presets</c>: what there is to start from.</summary>
internal static class PresetsCommand
{
    internal static Command Build(CommandIo io)
    {
        var name = new Argument<string?>("NAME")
        {
            Description = "Print this preset as a commented spec.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var json = new Option<bool>("--json") { Description = "Print one JSON envelope." };
        var command = new Command(
            "presets",
            """
            List the presets, or print one as a commented spec to start from.

            Example:
              calibgeom presets witness > mine.json
            """
        );
        command.Arguments.Add(name);
        command.Options.Add(json);
        command.SetAction(parsed => Run(io, parsed.GetValue(name), parsed.GetValue(json)));
        return command;
    }

    private static int Run(CommandIo io, string? name, bool json)
    {
        if (name is null)
            List(io, json);
        else
            Print(io, Find(name), json);
        return ExitCode.Done;
    }

    /// <exception cref="InputException">There is no such preset.</exception>
    private static Preset Find(string name) =>
        Presets.Find(name)
        ?? throw new InputException(
            InputIds.Option,
            $"There is no preset \"{name}\".{Meant(name)} The presets are {string.Join(", ", Presets.All.Select(p => p.Name))}."
        );

    private static string Meant(string name) =>
        Spelling.Nearest(name, Presets.All.Select(p => p.Name), Math.Max(1, name.Length / 3)) is { } near
            ? $" Did you mean {near}?"
            : "";

    private static void List(CommandIo io, bool json)
    {
        if (json)
            Envelope.Write(
                io.Out,
                "presets",
                [],
                new JsonObject { ["presets"] = new JsonArray(Presets.All.Select(p => (JsonNode)Describe(p)).ToArray()) }
            );
        else
            TextTable.WriteLeft(io.Out, Presets.All.Select(p => new[] { p.Name, p.Purpose }).ToArray());
    }

    private static void Print(CommandIo io, Preset preset, bool json)
    {
        if (!json)
        {
            io.Out.Write(SpecJson.ToCommentedText(preset.Spec, $"Preset {preset.Name}. {preset.Purpose}"));
            return;
        }
        JsonObject result = Describe(preset);
        result["spec"] = JsonNode.Parse(SpecJson.ToCanonicalBytes(preset.Spec));
        Envelope.Write(io.Out, "presets", [], result);
    }

    private static JsonObject Describe(Preset preset) =>
        new()
        {
            ["name"] = preset.Name,
            ["purpose"] = preset.Purpose,
            ["digest"] = SpecDigest.Of(preset.Spec),
        };
}
