using System.Text;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests.Logs;

/// <summary>A log from text.</summary>
internal static class LogText
{
    internal static TrialLog Read(string text, string name = "log")
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return TrialLog.Read(stream, name);
    }
}
