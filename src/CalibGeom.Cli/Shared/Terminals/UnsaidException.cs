namespace CalibGeom.Cli.Shared.Terminals;

/// <summary>The result of a run could not be written to standard output.</summary>
internal sealed class UnsaidException(Exception cause)
    : IOException($"standard output cannot be written: {cause.Message}", cause);
