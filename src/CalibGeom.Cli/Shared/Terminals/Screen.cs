using Spectre.Console;

namespace CalibGeom.Cli.Shared.Terminals;

/// <summary>Consoles that draw tables and fold lines.</summary>
internal static class Screen
{
    // Wider than any table: in files and pipes nothing is folded.
    private const int Endless = 20_000;

    /// <summary>Whether colours are welcome: see no-color.org.</summary>
    internal static bool Colours =>
        string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") != "dumb";

    internal static IAnsiConsole Terminal(TextWriter writer, int width, bool colours)
    {
        IAnsiConsole console = AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Out = new AnsiConsoleOutput(writer),
                Ansi = colours ? AnsiSupport.Yes : AnsiSupport.No,
                ColorSystem = colours ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
                Interactive = InteractionSupport.No,
            }
        );
        console.Profile.Width = Math.Max(20, width);
        return console;
    }

    /// <summary>A table as lines of text, no wider than a terminal where there is one.</summary>
    internal static IEnumerable<string> Lines(Grid table, int? width)
    {
        using var text = new StringWriter();
        Terminal(text, width ?? Endless, colours: false).Write(table);
        return text.ToString().TrimEnd().Split('\n').Select(l => l.TrimEnd());
    }
}
