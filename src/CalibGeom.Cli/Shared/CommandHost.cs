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
using CalibGeom.Cli.Shared.Outputs;
using CalibGeom.Cli.Shared.Terminals;
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
        bool json = args.Contains("--json", StringComparer.Ordinal);
        string name = "calibgeom";
        try
        {
            RequireOneLine(args);
            RootCommand root = BuildRoot(io);
            ParseResult parsed = root.Parse(HelpCommand.Rewrite(args), Configuration);
            name = BareCommand.PathOf(parsed.CommandResult);
            return Answer(parsed, io);
        }
        catch (UnsaidException e) when (io.HasWritten)
        {
            io.Error.WriteLine(
                $"{name}: all files are written, but the result could not be said: {e.Message}. Do not run it again; look at the files."
            );
            return ExitCode.Unsaid;
        }
        catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
        {
            return Failure.Tell(io, name, Lines(e), json, ExitCode.BadUse);
        }
        catch (Exception e)
        {
            return Failure.Tell(io, name, e, json);
        }
    }

    /// <summary>What is said of a name is one line; a name of two could make a second that looks like ours.</summary>
    private static void RequireOneLine(string[] args)
    {
        foreach (string word in args)
            if (word.AsSpan().IndexOfAny('\n', '\r', '\0') is var at and >= 0)
                throw new InputException(
                    InputIds.Option,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"\"{PlainWriter.OneLine(word)}\" holds a {(word[at] == '\0' ? "zero byte" : "line end")} at position {at + 1}. Names are of one line; rename the file, or leave it out."
                    )
                );
    }

    /// <summary>A word without a letter, mostly a variable of a script that holds nothing, names no file.</summary>
    private static void RequireNoneEmpty(ParseResult parsed)
    {
        foreach (SymbolResult part in parsed.CommandResult.Children)
            if (part.Tokens.Any(t => t.Value.Length == 0) && part is not OptionResult { Option.Name: "--coupon" })
                throw new InputException(
                    InputIds.Option,
                    part is OptionResult option
                        ? $"{option.Option.Name} is empty. Give it a value, or leave it out."
                        : $"A word is empty where <{((ArgumentResult)part).Argument.Name}> is meant. Name it, or leave the word out."
                );
    }

    private static string Lines(Exception e) =>
        string.Join('\n', ((e as InputException)?.Problems ?? [e.Message]).Select(PlainWriter.OneLine));

    private static int Answer(ParseResult parsed, CommandIo io)
    {
        if (BareCommand.Answer(parsed, io) is { } code)
            return code;
        if (PlainOptions.UnknownOption(parsed) is { } unknown)
            throw new InputException(InputIds.Option, unknown);
        if (parsed.Errors.Count > 0)
            throw new InputException(InputIds.Option, ParseErrors.Describe(parsed));
        RequireNoneEmpty(parsed);
        io.Quiet = parsed.GetValue<bool>("--quiet");
        io.Overwriting = OverwriteRule.Of(parsed);
        io.Overwriting.RequireFree(parsed);
        return parsed.Invoke(
            new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
                Output = io.Out,
                Error = io.Error,
            }
        );
    }

    private static ParserConfiguration Configuration { get; } = new() { ResponseFileTokenReplacer = null };

    internal static RootCommand BuildRoot(CommandIo io)
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
        root.Options.Add(
            new Option<bool>("--force")
            {
                Description = "Write over files that this tool did not write, or that hold what was measured.",
                Recursive = true,
            }
        );
        PlainOptions.Use(root);
        HelpWithExample.Use(root);
        return root;
    }
}
