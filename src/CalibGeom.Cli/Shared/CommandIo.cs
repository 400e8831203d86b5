namespace CalibGeom.Cli.Shared;

/// <summary>Where a command reads and writes, so that tests can stand in for the terminal.</summary>
internal sealed class CommandIo
{
    /// <summary>The result, as text.</summary>
    internal required TextWriter Out { get; init; }

    /// <summary>Everything else that is said.</summary>
    internal required TextWriter Error { get; init; }

    /// <summary>Standard input, as bytes.</summary>
    internal required Func<Stream> OpenInput { get; init; }

    /// <summary>Standard output, as bytes.</summary>
    internal required Func<Stream> OpenOutput { get; init; }

    /// <summary>Whether a person is looking at <see cref="Error"/>, so that progress may be drawn.</summary>
    internal bool Interactive { get; init; }

    /// <summary>Whether nothing but the result and what went wrong is said.</summary>
    internal bool Quiet { get; set; }

    /// <summary>
    /// Whether a person is looking at <see cref="OpenOutput"/>, whom bytes of a mesh would not please.
    /// </summary>
    internal bool OutputIsTerminal { get; init; }

    /// <summary>Says something beside the result, unless <see cref="Quiet"/>.</summary>
    internal void Say(string text)
    {
        if (!Quiet)
            Error.WriteLine(text);
    }

    /// <summary>What says how long work takes.</summary>
    internal TimeProvider Clock { get; init; } = TimeProvider.System;

    internal static CommandIo Console() =>
        new()
        {
            Out = new StreamWriter(System.Console.OpenStandardOutput()) { AutoFlush = true },
            Error = new StreamWriter(System.Console.OpenStandardError()) { AutoFlush = true },
            OpenInput = System.Console.OpenStandardInput,
            OpenOutput = System.Console.OpenStandardOutput,
            OutputIsTerminal = !System.Console.IsOutputRedirected,
            Interactive = !System.Console.IsErrorRedirected,
        };
}
