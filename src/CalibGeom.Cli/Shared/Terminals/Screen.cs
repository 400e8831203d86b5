using Spectre.Console;
using Spectre.Console.Rendering;

namespace CalibGeom.Cli.Shared.Terminals;

/// <summary>Consoles that draw tables and fold lines.</summary>
internal static class Screen
{
    // Wider than any table: in files and pipes nothing is folded.
    private const int Endless = 20_000;

    private const int Narrow = 80;

    private const int Least = 20;

    /// <summary>Whether colours are welcome: see no-color.org.</summary>
    internal static bool Colours =>
        string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") != "dumb";

    /// <summary>Whether a line on a terminal can be drawn over.</summary>
    internal static bool CanDrawAnew => Environment.GetEnvironmentVariable("TERM") != "dumb";

    /// <summary>
    /// A console over the writer below, which lets lines be drawn anew; texts for it are made plain beforehand.
    /// </summary>
    internal static IAnsiConsole Live(TextWriter writer)
    {
        var plain = PlainWriter.Over(writer);
        IAnsiConsole console = AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Out = new AnsiConsoleOutput(plain.Inner),
                Ansi = AnsiSupport.Yes,
                ColorSystem = Colours ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
                Interactive = InteractionSupport.Yes,
            }
        );
        console.Profile.Width = plain.Width ?? Narrow;
        return console;
    }

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
        console.Profile.Width = Math.Max(Least, width);
        return console;
    }

    /// <summary>
    /// A table as lines of text, no wider than a terminal where there is one. Drawn without a console, which would ask
    /// the terminal what it can do.
    /// </summary>
    internal static IEnumerable<string> Lines(IRenderable table, int? width)
    {
        int most = width is { } columns ? Math.Max(Least, columns) : Endless;
        var options = new RenderOptions(new NoTerminal(), new Size(most, Narrow));
        IEnumerable<Segment> drawn = table.Render(options, most);
        return string.Concat(drawn.Select(s => s.Text)).TrimEnd().Split('\n').Select(l => l.TrimEnd());
    }
}
