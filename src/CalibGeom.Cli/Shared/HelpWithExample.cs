using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace CalibGeom.Cli.Shared;

/// <summary>Help whose last lines are the command's example: what follows "Example:" in its description.</summary>
internal sealed class HelpWithExample(HelpAction help) : SynchronousCommandLineAction
{
    private const string Mark = "\nExample:";

    /// <summary>Puts it in the place of the help that a command comes with.</summary>
    internal static void Use(RootCommand root)
    {
        HelpOption option = root.Options.OfType<HelpOption>().Single();
        option.Action = new HelpWithExample((HelpAction)option.Action!);
    }

    /// <summary>Whoever asks for help need not have given what the command requires.</summary>
    public override bool ClearsParseErrors => true;

    private static string Unknown(string word, Command command)
    {
        string? near = Spelling.Nearest(word, command.Subcommands.Select(c => c.Name), Math.Max(1, word.Length / 3));
        return $"There is no command {word}.{(near is null ? "" : $" Did you mean {near}?")} See calibgeom --help.";
    }

    public override int Invoke(ParseResult parseResult)
    {
        Command command = parseResult.CommandResult.Command;
        if (command.Subcommands.Count > 0 && parseResult.UnmatchedTokens is [var word, ..])
            throw new InputException(Unknown(word, command));
        string[] parts = (command.Description ?? "").Split(Mark, 2);
        command.Description = parts[0].TrimEnd();
        int code = help.Invoke(parseResult);
        if (parts.Length == 2)
            parseResult.InvocationConfiguration.Output.WriteLine(Mark.TrimStart() + parts[1].TrimEnd());
        return code;
    }
}
