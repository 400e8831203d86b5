using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Numerics;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// Numbers of all options, read the same on every machine (2,5 is never 25) and refused in plain words.
/// </summary>
internal static class PlainOptions
{
    private const string Number = "Write a number with a decimal point, such as 0.05",
        Whole = "Write a whole number";

    /// <summary>Lets a command and those below it read numbers so.</summary>
    internal static void Use(Command command)
    {
        foreach (Option option in command.Options)
            Use(option);
        foreach (Command below in command.Subcommands)
            Use(below);
    }

    /// <summary>What is wrong with an argument that looks like an option, or null.</summary>
    internal static string? UnknownOption(ParseResult parsed) =>
        parsed.Tokens.Any(t => t.Type == TokenType.DoubleDash)
        || parsed.Tokens.FirstOrDefault(t =>
            t.Type == TokenType.Argument && t.Value.StartsWith("--", StringComparison.Ordinal)
        )
            is not { } token
            ? null
            : $"There is no option {token.Value} here.{Near(token.Value, parsed.CommandResult.Command)} See --help.";

    private static string Near(string name, Command command) =>
        Spelling.Nearest(name, command.Options.Select(o => o.Name), Math.Max(1, name.Length / 3)) is { } near
            ? $" Did you mean {near}?"
            : "";

    private static void Use(Option option)
    {
        switch (option)
        {
            case Option<double> o:
                o.CustomParser = r => Read<double>(r, NumberStyles.Float, Number) ?? 0;
                break;
            case Option<double?> o:
                o.CustomParser = r => Read<double>(r, NumberStyles.Float, Number);
                break;
            case Option<int?> o:
                o.CustomParser = r => Read<int>(r, NumberStyles.AllowLeadingSign, Whole);
                break;
            case Option<int> o:
                o.CustomParser = r => Read<int>(r, NumberStyles.AllowLeadingSign, Whole) ?? 0;
                break;
            case Option<ulong?> o:
                o.CustomParser = r => Read<ulong>(r, NumberStyles.None, $"{Whole} from 0 on");
                break;
        }
    }

    private static T? Read<T>(ArgumentResult result, NumberStyles styles, string remedy)
        where T : struct, INumber<T>
    {
        string text = result.Tokens[^1].Value,
            option = result.Parent is OptionResult { IdentifierToken.Value: { } name } ? name : result.Argument.Name;
        if (T.TryParse(text, styles, CultureInfo.InvariantCulture, out T value))
            return value;
        result.AddError($"{option} {text} cannot be read. {remedy}.");
        return null;
    }
}
