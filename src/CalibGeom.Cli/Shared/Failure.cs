using CalibGeom.Cli.Shared.Terminals;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// How a run that cannot go on ends: one line on stderr, the envelope where it was asked for, an exit code.
/// </summary>
internal static class Failure
{
    /// <summary>The environment variable that asks for the trace of a fault.</summary>
    internal const string TraceVariable = "CALIBGEOM_TRACE";

    private const int Longest = 1900;
    private const string Cut = " (...) ";

    /// <summary>Says it and returns the exit code.</summary>
    internal static int Tell(CommandIo io, string name, string message, bool json, int code)
    {
        string said = Short(message);
        io.Error.WriteLine($"{name}: {said}");
        if (json)
            try
            {
                Envelope.Write(
                    io.Out,
                    name.Split(' ', 2)[^1],
                    [new Finding(code == ExitCode.Fault ? "program-fault" : "bad-use", Severity.Error, "", said, "")],
                    null
                );
            }
            catch (UnsaidException)
            {
                // It is said on stderr, and there is nobody to read the envelope.
            }
        return code;
    }

    /// <summary>Says a fault of this program, with its whole trace when that is asked for.</summary>
    internal static int Tell(CommandIo io, string name, Exception fault, bool json)
    {
        int code = Tell(io, name, Words(fault), json, ExitCode.Fault);
        if (!string.IsNullOrEmpty(Environment.GetEnvironmentVariable(TraceVariable)))
            io.Error.WriteLine(fault.ToString());
        return code;
    }

    private static string Words(Exception fault) =>
        IsMemory(fault)
            ? "there is not enough memory for this input. Give a smaller one."
            : $"this is a fault of the program, not of yours ({fault.GetType().Name}). Files stand as they were. "
                + $"Please report it with what {TraceVariable}=1 adds.";

    /// <summary>Whether memory ran out, here or in work on several cores.</summary>
    private static bool IsMemory(Exception fault) =>
        fault is OutOfMemoryException
        || (fault is AggregateException all && all.Flatten().InnerExceptions.Any(e => e is OutOfMemoryException));

    /// <summary>
    /// A message of at most 1,900 characters, also where names of other people in it are longer or hold escapes. What
    /// is too much is left out of its middle: the beginning says where it is, the end what to do.
    /// </summary>
    private static string Short(string message)
    {
        string plain = PlainWriter.Plain(message);
        if (plain.Length <= Longest)
            return plain;
        int half = (Longest - Cut.Length) / 2;
        // Half a letter of two units is no letter.
        string begin = char.IsHighSurrogate(plain[half - 1]) ? plain[..(half - 1)] : plain[..half],
            end = char.IsLowSurrogate(plain[^half]) ? plain[^(half - 1)..] : plain[^half..];
        return begin + Cut + end;
    }
}
