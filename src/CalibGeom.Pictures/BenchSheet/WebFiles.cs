namespace CalibGeom.Pictures.BenchSheet;

/// <summary>
/// The sheet's own script and style, which stand as small files under Web and travel in this assembly.
/// </summary>
internal static class WebFiles
{
    /// <summary>The scripts in the order in which they need each other.</summary>
    internal static readonly string[] Scripts = ["numbers.js", "slips.js", "readings.js", "view3d.js", "sheet.js"];

    internal static string Read(string name)
    {
        using Stream stream =
            typeof(WebFiles).Assembly.GetManifestResourceStream($"Web.{name}")
            ?? throw new InvalidOperationException($"The file {name} is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
