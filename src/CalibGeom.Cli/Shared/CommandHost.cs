using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using CalibGeom.Cli.Calipers;
using CalibGeom.Cli.Draw;
using CalibGeom.Cli.Inspect;
using CalibGeom.Cli.Logs;
using CalibGeom.Cli.Make;
using CalibGeom.Cli.Maps;
using CalibGeom.Cli.Place;
using CalibGeom.Cli.Predict;
using CalibGeom.Cli.Simulate;
using CalibGeom.Cli.Start;
using CalibGeom.Cli.Trends;
using CalibGeom.Cli.Tune;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// Parses a command line, runs the command and turns errors into one line on stderr and an exit code.
/// </summary>
internal static class CommandHost
{
    internal static int Run(string[] args, CommandIo io)
    {
        // What this program says is English on every machine; so is what the parser says.
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        RootCommand root = BuildRoot(io);
        ParseResult parsed = root.Parse(HelpCommand.Rewrite(args), Configuration);
        string name = NameOf(parsed.CommandResult);
        bool json = args.Contains("--json", StringComparer.Ordinal);
        if (BareCommand.Answer(parsed, io) is { } code)
            return code;
        if (PlainOptions.UnknownOption(parsed) is { } unknown)
            return Fail(io, name, unknown, json);
        if (parsed.Errors.Count > 0)
            return Fail(io, name, ParseErrors.Describe(parsed), json);
        io.Quiet = parsed.GetValue<bool>("--quiet");
        try
        {
            return parsed.Invoke(
                new InvocationConfiguration
                {
                    EnableDefaultExceptionHandler = false,
                    Output = io.Out,
                    Error = io.Error,
                }
            );
        }
        catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
        {
            return Fail(io, name, e.Message, json);
        }
        catch (Exception e)
        {
            return Report(io, name, args, e, json);
        }
    }

    private static ParserConfiguration Configuration { get; } = new() { ResponseFileTokenReplacer = null };

    private static RootCommand BuildRoot(CommandIo io)
    {
        var root = new RootCommand(
            "Test geometry for resin printers: make it, check it, place it, and learn from what was printed."
        );
        root.Subcommands.Add(MakeCommand.Build(io));
        root.Subcommands.Add(DrawCommand.Build(io));
        root.Subcommands.Add(PresetsCommand.Build(io));
        root.Subcommands.Add(StartCommand.Build(io));
        root.Subcommands.Add(LogCommand.Build(io));
        root.Subcommands.Add(TuneCommand.Build(io));
        root.Subcommands.Add(TrendCommand.Build(io));
        root.Subcommands.Add(MapCommand.Build(io));
        root.Subcommands.Add(SimulateCommand.Build(io));
        root.Subcommands.Add(InspectCommand.Build(io));
        root.Subcommands.Add(ReadingsCommand.Build(io));
        root.Subcommands.Add(PredictCommand.Build(io));
        root.Subcommands.Add(CaliperCommand.Build(io));
        root.Subcommands.Add(PlaceCommand.Build(io));
        root.Subcommands.Add(CompletionsCommand.Build(io));
        root.Subcommands.Add(HelpCommand.Build());
        root.Options.Add(
            new Option<bool>("--quiet", "-q")
            {
                Description = "Say nothing but the result and what went wrong: no caution, no list of files.",
                Recursive = true,
            }
        );
        PlainOptions.Use(root);
        HelpWithExample.Use(root);
        return root;
    }

    /// <summary>The command with those above it, such as <c>calibgeom log add</c>.</summary>
    private static string NameOf(CommandResult result) =>
        result.Parent is CommandResult parent ? $"{NameOf(parent)} {result.Command.Name}" : "calibgeom";

    /// <summary>What nobody expected: said in one sentence, with what a report of it should hold below.</summary>
    private static int Report(CommandIo io, string name, string[] args, Exception e, bool json)
    {
        string message =
            $"This is a fault of the program, not of what you gave it: {e.Message} Please report it with the lines below.";
        io.Error.WriteLine($"{name}: {message}");
        io.Error.WriteLine($"  calibgeom {Envelope.Version}, .NET {Environment.Version}: {string.Join(' ', args)}");
        io.Error.WriteLine($"  {e.ToString().ReplaceLineEndings("\n  ")}");
        if (json)
            Envelope.Write(
                io.Out,
                name.Split(' ', 2)[^1],
                [new Finding("program-fault", Severity.Error, "", message, "")],
                null
            );
        return ExitCode.Fault;
    }

    private static int Fail(CommandIo io, string name, string message, bool json)
    {
        io.Error.WriteLine($"{name}: {message}");
        if (json)
            Envelope.Write(
                io.Out,
                name.Split(' ', 2)[^1],
                [new Finding("bad-use", Severity.Error, "", message, "")],
                null
            );
        return ExitCode.BadUse;
    }
}
