using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// Help that ends with all exit codes of a command and with its example: what follows "Exit codes:" and "Example:" in
/// its description. A list of commands shows what each is for, no more.
/// </summary>
internal sealed class HelpWithExample(HelpAction help) : SynchronousCommandLineAction
{
    private const string Mark = "\nExample:";
    private const string Codes = "Exit codes:";
    private const string UsualCodes = "0 done, 2 bad use or something that cannot be read or written.";
    private const string CodesOfAll =
        "3 a fault of the program or too little memory, 4 all files are written but the result could not be said.";

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
            throw new InputException(InputIds.Option, Unknown(word, command));
        string[] parts = (command.Description ?? "").Split(Mark, 2),
            told = parts[0].Split(Codes, 2);
        command.Description = told[0].TrimEnd();
        foreach (Command below in command.Subcommands)
            below.Description = (below.Description ?? "").Split("\n\n", 2)[0];
        int code = help.Invoke(parseResult);
        TextWriter output = parseResult.InvocationConfiguration.Output;
        if (command.Subcommands.Count == 0)
        {
            output.WriteLine(Codes);
            output.WriteLine("  " + (told.Length == 2 ? told[1].Trim() : UsualCodes));
            output.WriteLine("  " + CodesOfAll);
        }
        if (parts.Length == 2)
            output.WriteLine((command.Subcommands.Count == 0 ? Mark : Mark.TrimStart()) + parts[1].TrimEnd());
        return code;
    }
}
