using System.Text;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace CalibGeom.Cli.Shared.Terminals;

/// <summary>
/// What the program says, with nothing in it that a terminal would obey: control characters and marks of direction in
/// other people's names stand as <c>\u001B</c>, which in JSON means the same. On a terminal lines are folded at its
/// width. Closing it leaves the writer below open.
/// </summary>
internal sealed class PlainWriter : TextWriter
{
    private readonly IAnsiConsole? terminal;

    private PlainWriter(TextWriter inner, int? width, bool colours)
    {
        Inner = inner;
        terminal = width is { } columns ? Screen.Terminal(inner, columns, colours) : null;
    }

    /// <summary>The writer below, which takes everything as it is.</summary>
    internal TextWriter Inner { get; }

    /// <summary>How many columns the terminal has; null where there is none.</summary>
    internal int? Width => terminal?.Profile.Width;

    public override Encoding Encoding => Inner.Encoding;

    /// <summary>A writer for a file or a pipe; itself when it is one of these already.</summary>
    internal static PlainWriter Over(TextWriter inner) => inner as PlainWriter ?? new PlainWriter(inner, null, false);

    /// <summary>A writer for a terminal.</summary>
    internal static PlainWriter OnTerminal(TextWriter inner, int width, bool colours) => new(inner, width, colours);

    public override void Write(char value) => Inner.Write(IsPlain(value) ? value : Escaped(value));

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(string? value) => Inner.Write(Plain(value ?? ""));

    public override void WriteLine(string? value)
    {
        string text = Plain(value ?? "");
        if (
            terminal is not null
            && text.Length > terminal.Profile.Width
            && !text.Contains('\n', StringComparison.Ordinal)
        )
            Fold(new Paragraph(text.TrimStart()), text);
        else
            Inner.WriteLine(text);
    }

    /// <summary>A line whose beginning has a colour of its own, where there are colours.</summary>
    internal void WriteLine(string marked, Color colour, string rest)
    {
        if (terminal is null)
            WriteLine(marked + rest);
        else
            Fold(new Paragraph(marked, new Style(colour)).Append(Plain(rest)), marked);
    }

    public override void Flush() => Inner.Flush();

    /// <summary>
    /// A text without characters that a terminal obeys. A carriage return that ends no line would let what follows be
    /// written over what stands there.
    /// </summary>
    internal static string Plain(string text) =>
        Enumerable.Range(0, text.Length).All(i => IsPlain(text, i))
            ? text
            : string.Concat(text.Select((c, i) => IsPlain(text, i) ? c.ToString() : Escaped(c)));

    /// <summary>A text of one line, line ends in it written as what they are.</summary>
    internal static string OneLine(string text) =>
        Plain(text)
            .Replace("\n", Escaped('\n'), StringComparison.Ordinal)
            .Replace("\r", Escaped('\r'), StringComparison.Ordinal);

    private static bool IsPlain(string text, int i) =>
        IsPlain(text[i]) && (text[i] != '\r' || (i + 1 < text.Length && text[i + 1] == '\n'));

    private static string Escaped(char c) => FormattableString.Invariant($"\\u{(int)c:X4}");

    // Tabs and line ends are ours; other control characters and all that turns text round are not.
    private static bool IsPlain(char c) =>
        c is '\n' or '\r' or '\t'
        || !(
            char.IsControl(c)
            || c is '\u061C' or '\u200E' or '\u200F' or '\u2028' or '\u2029' or '\uFEFF'
            || c is >= '\u202A' and <= '\u202E'
            || c is >= '\u2066' and <= '\u2069'
        );

    private void Fold(IRenderable words, string line)
    {
        int indent = Math.Min(line.Length - line.TrimStart().Length, terminal!.Profile.Width / 2);
        terminal.Write(new Padder(words, new Padding(indent, 0, 0, 0)));
    }
}
