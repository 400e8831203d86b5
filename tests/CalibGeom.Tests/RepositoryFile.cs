namespace CalibGeom.Tests;

/// <summary>Files of the repository that are made from the code, and must be what the code makes.</summary>
internal static class RepositoryFile
{
    /// <summary>Set to 1 to write the files anew instead of comparing them.</summary>
    private const string Renew = "CALIBGEOM_RENEW";

    internal static string Root { get; } = FindRoot();

    internal static bool Renewing => Environment.GetEnvironmentVariable(Renew) == "1";

    /// <summary>Asserts that a file holds exactly these bytes.</summary>
    internal static void AssertHolds(string relativePath, byte[] expected)
    {
        string path = Path.Combine(Root, relativePath);
        if (Renewing) File.WriteAllBytes(path, expected);
        Assert.True(File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(expected),
            $"{relativePath} is not what the code makes. Run the tests once with {Renew}=1 and look at what changed.");
    }

    private static string FindRoot()
    {
        var directory = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(directory.FullName, "CalibGeom.sln"))) directory = directory.Parent!;
        return directory.FullName;
    }
}
