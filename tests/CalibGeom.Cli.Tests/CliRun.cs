using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Tests.Schemas;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// One run of the command line: in this process, or, where <c>CALIBGEOM_PROGRAM</c> names an installed program, by
/// that.
/// </summary>
internal sealed record CliRun(int ExitCode, string Out, string Error, byte[] Bytes)
{
    internal static CliRun Of(params string[] args) => With([], args);

    internal static CliRun With(byte[] input, params string[] args) =>
        InstalledProgram.Path is { } program
            ? InstalledProgram.Run(program, input, args)
            : With(input, TimeProvider.System, args);

    /// <summary>A run on another day.</summary>
    internal static CliRun On(DateOnly day, params string[] args) => With([], new OneDay(day), args);

    private static CliRun With(byte[] input, TimeProvider clock, string[] args)
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
            Clock = clock,
        };
        int code = CommandHost.Run(args, io);
        if (args.Contains("--json") && output.ToString() is { Length: > 0 } envelope)
            OutputSchema.Require(envelope);
        return new CliRun(code, output.ToString(), error.ToString(), bytes.ToArray());
    }

    private sealed class OneDay(DateOnly day) : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(day.ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero);
    }
}
