using System.CommandLine;
using System.CommandLine.Invocation;

namespace CalibGeom.Cli.Shared;

/// <summary>What the parser found wrong, in one line, with its own suggestions for misspelt words.</summary>
internal static class ParseErrors
{
    internal static string Describe(ParseResult parsed)
    {
        string[] errors = parsed.Errors.Select(e => e.Message.TrimEnd('.') + ".").Distinct().ToArray();
        string said = string.Join(" ", errors.Where(e => errors.Length == 1 || !e.Contains("Required command")));
        string near = string.Join(" ", Suggestions(parsed));
        return $"{said}{(near.Length > 0 ? " " + near : "")}{Slot(parsed)} See {BareCommand.PathOf(parsed.CommandResult)} --help.";
    }

    /// <summary>The parser's own words: "Did you mean one of the following?" and the candidates.</summary>
    private static IEnumerable<string> Suggestions(ParseResult parsed)
    {
        if (parsed.Action is not ParseErrorAction action || parsed.UnmatchedTokens.Count == 0)
            yield break;
        using var text = new StringWriter();
        (action.ShowHelp, action.ShowTypoCorrections) = (false, true);
        parsed.Invoke(new InvocationConfiguration { Output = text, Error = text });
        bool listing = false;
        var near = new List<string>();
        foreach (string line in text.ToString().Split('\n').Select(l => l.Trim()))
        {
            if (line.Contains("Did you mean", StringComparison.Ordinal))
                listing = true;
            else if (listing && line.Length > 0)
                near.Add(line);
            else if (listing && near.Count > 0)
                listing = false;
        }
        if (near.Count > 0)
            yield return $"Did you mean {string.Join(" or ", near.Distinct())}?";
    }

    /// <summary>A file given where the object option belongs.</summary>
    private static string Slot(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        bool takesObject = command.Options.Any(o => o.Name == ObjectOption.Name);
        string? file = parsed.UnmatchedTokens.FirstOrDefault(t => !t.StartsWith('-'));
        return takesObject && file is not null && command.Arguments.Count == 0
            ? $" To say what the object is, write {ObjectOption.Name} {file}."
            : "";
    }
}
