namespace CalibGeom.Cli.Shared;

/// <summary>What the process says by its exit code.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    internal const int Done = 0;

    /// <summary>The answer is a finding.</summary>
    internal const int Finding = 1;

    /// <summary>Bad use, or something unreadable or unwritable.</summary>
    internal const int BadUse = 2;

    /// <summary>A fault of this program itself, or too little memory.</summary>
    internal const int Fault = 3;

    /// <summary>All that was to be written to files is there, but the result could not be said.</summary>
    internal const int Unsaid = 4;
}
