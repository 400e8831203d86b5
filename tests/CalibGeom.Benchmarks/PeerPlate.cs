using System.Diagnostics;
using System.Globalization;

namespace CalibGeom.Benchmarks;

/// <summary>The plate of the table made by Manifold, where tests/peers has installed it.</summary>
internal static class PeerPlate
{
    private const string Script = "plate.mjs";

    /// <summary>The least processor time, ms; null when it is not installed.</summary>
    internal static double? Time()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !Directory.Exists(Path.Combine(folder, "tests", "peers")))
            folder = Path.GetDirectoryName(folder);
        if (folder is null || !Directory.Exists(Path.Combine(folder, "tests", "peers", "node_modules")))
            return null;
        using Process node = Process.Start(
            new ProcessStartInfo("node", [Script])
            {
                WorkingDirectory = Path.Combine(folder, "tests", "peers"),
                RedirectStandardOutput = true,
            }
        )!;
        string said = node.StandardOutput.ReadToEnd();
        node.WaitForExit();
        return double.Parse(said, CultureInfo.InvariantCulture);
    }
}
