using CalibGeom.Cli.Shared.Terminals;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// How a run that cannot go on ends: one line on stderr, the envelope where it was asked for, an exit code.
/// </summary>
internal static class Failure
{
    /// <summary>The environment variable that asks for the trace of a fault.</summary>
    internal const string TraceVariable = "CALIBGEOM_TRACE";

    private const int Longest = 2000;

    /// <summary>Says it and returns the exit code.</summary>
    internal static int Tell(CommandIo io, string name, string message, bool json, int code)
    {
        string said = Short(message);
        io.Error.WriteLine(Short($"{name}: {said}"));
        if (json)
            Envelope.Write(
                io.Out,
                name.Split(' ', 2)[^1],
                [new Finding(code == ExitCode.Fault ? "program-fault" : "bad-use", Severity.Error, "", said, "")],
                null
            );
        return code;
    }

    /// <summary>What is said of a fault of this program; the whole trace when it is asked for.</summary>
    internal static string Words(Exception fault)
    {
        if (!string.IsNullOrEmpty(Environment.GetEnvironmentVariable(TraceVariable)))
            return fault.ToString();
        return fault is OutOfMemoryException
            ? "there is not enough memory for this input. Give a smaller one."
            : $"this is a fault of the program, not of yours ({fault.GetType().Name}). Files stand as they were. "
                + $"Please report it with what {TraceVariable}=1 adds.";
    }

    /// <summary>
    /// One line of at most 2,000 characters, also where names of other people in it are longer or hold escapes.
    /// </summary>
    private static string Short(string message)
    {
        string plain = PlainWriter.Plain(message);
        return plain.Length <= Longest ? plain : plain[..(Longest - 20)] + " (and so on)";
    }
}
