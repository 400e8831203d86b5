namespace CalibGeom.Browser.Tests;

/// <summary>The browser of this machine.</summary>
internal static class InstalledBrowser
{
    internal const string Missing =
        "There is no browser here. Install Debian's chromium, or name one in CALIBGEOM_BROWSER; .ci/run does so.";

    internal static string? Path { get; } =
        new[]
        {
            Environment.GetEnvironmentVariable("CALIBGEOM_BROWSER"),
            "/usr/bin/chromium",
            "/usr/bin/chromium-browser",
            "/usr/bin/google-chrome",
        }.FirstOrDefault(File.Exists);
}
