namespace CalibGeom.Tests.Shared;

/// <summary>Where the repository lies, for tests that compare with its files.</summary>
internal static class Repository
{
    /// <summary>The folder with CalibGeom.sln.</summary>
    internal static string Root { get; } = FindRoot();

    /// <summary>Whether files that tests compare with are to be rewritten: CALIBGEOM_UPDATE=1.</summary>
    internal static bool Updating => Environment.GetEnvironmentVariable("CALIBGEOM_UPDATE") == "1";

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "CalibGeom.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("CalibGeom.sln is not above the tests.");
    }
}
