using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Shared;

/// <summary>A log from a file or from standard input.</summary>
internal static class LogInput
{
    /// <exception cref="InputException">It does not exist or is no log.</exception>
    internal static TrialLog Read(CommandIo io, string path)
    {
        if (path != "-")
        {
            WrongFile.RequireNoOther(path, InputKind.Log);
            return TrialLog.Read(path);
        }
        using Stream input = io.OpenInput();
        return TrialLog.Read(input, "standard input");
    }
}
