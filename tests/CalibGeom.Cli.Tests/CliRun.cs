using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Tests.Schemas;

namespace CalibGeom.Cli.Tests;

/// <summary>One run of the command line in this process, in a directory of its own.</summary>
internal sealed record CliRun(int ExitCode, string Out, string Error, byte[] Bytes)
{
    internal static CliRun Of(params string[] args) => With([], args);

    internal static CliRun With(byte[] input, params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var bytes = new MemoryStream();
        var io = new CommandIo
        {
            Out = output,
            Error = error,
            OpenInput = () => new MemoryStream(input),
            OpenOutput = () => bytes,
        };
        int code = CommandHost.Run(args, io);
        if (args.Contains("--json") && output.ToString() is { Length: > 0 } envelope)
            OutputSchema.Require(envelope);
        return new CliRun(code, output.ToString(), error.ToString(), bytes.ToArray());
    }
}
