using Spectre.Console;

namespace CalibGeom.Cli.Shared.Terminals;

/// <summary>What a file can show: text and nothing else.</summary>
internal sealed class NoTerminal : IReadOnlyCapabilities
{
    public ColorSystem ColorSystem => ColorSystem.NoColors;

    public bool Ansi => false;

    public bool Links => false;

    public bool Legacy => false;

    public bool Interactive => false;

    public bool Unicode => true;

    public bool AlternateBuffer => false;
}
