using CalibGeom.Cli.Shared.Outputs;
using CalibGeom.Cli.Shared.Terminals;
using CalibGeom.Features.Files;
using CalibGeom.Objects;

namespace CalibGeom.Cli.Shared;

/// <summary>Where a command reads and writes, so that tests can stand in for the terminal.</summary>
internal sealed class CommandIo
{
    /// <summary>The result, as text.</summary>
    internal required TextWriter Out
    {
        get;
        init => field = PlainWriter.Over(value);
    }

    /// <summary>Everything else that is said.</summary>
    internal required TextWriter Error
    {
        get;
        init => field = PlainWriter.Over(value);
    }

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

    /// <summary>What may be written over.</summary>
    internal OverwriteRule Overwriting { get; set; } = OverwriteRule.None;

    /// <summary>The files that a command writes, together or not at all.</summary>
    internal OutputSet NewOutputs() => new(Overwriting.Refusal, Written);

    /// <summary>Whether something was written to a file, which stays though the result cannot be said.</summary>
    internal bool HasWritten { get; private set; }

    /// <summary>Notes that something was written to a file.</summary>
    internal void Written() => HasWritten = true;

    /// <summary>Refuses, before any work is done, what may not be written over.</summary>
    /// <exception cref="InputException">One of them may not.</exception>
    internal void RequireFree(IEnumerable<string> paths)
    {
        foreach (string path in paths)
            if (Overwriting.Refusal(path) is { } reason)
                throw new InputException(InputIds.Option, reason);
    }

    /// <summary>Refuses to write an object file over that of another object: readings of it would have none.</summary>
    /// <exception cref="InputException">Another object stands there.</exception>
    internal void RequireSameObject(string path, ObjectFile wanted)
    {
        if (Overwriting.ObjectRefusal(path, wanted) is { } reason)
            throw new InputException(InputIds.Option, reason);
    }

    /// <summary>Says something beside the result, unless <see cref="Quiet"/>.</summary>
    internal void Say(string text)
    {
        if (!Quiet)
            Error.WriteLine(text);
    }

    /// <summary>Says what must be said where something will be printed, short to a person at a terminal.</summary>
    internal void SayCaution() => Say(Interactive ? Caution.Short : Caution.Text);

    /// <summary>What says how long work takes and what day it is.</summary>
    internal TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>The day.</summary>
    internal DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().DateTime);

    internal static CommandIo Console() =>
        new()
        {
            Out = Writer(StandardOutput(), System.Console.IsOutputRedirected),
            Error = Writer(
                new SpokenStream(System.Console.OpenStandardError(), isResult: false),
                System.Console.IsErrorRedirected
            ),
            OpenInput = System.Console.OpenStandardInput,
            OpenOutput = StandardOutput,
            OutputIsTerminal = !System.Console.IsOutputRedirected,
            Interactive = !System.Console.IsErrorRedirected,
        };

    private static SpokenStream StandardOutput() => new(System.Console.OpenStandardOutput(), isResult: true);

    private static PlainWriter Writer(Stream stream, bool redirected)
    {
        var writer = new StreamWriter(stream) { AutoFlush = true };
        return redirected
            ? PlainWriter.Over(writer)
            : PlainWriter.OnTerminal(writer, System.Console.WindowWidth, Screen.Colours);
    }
}
