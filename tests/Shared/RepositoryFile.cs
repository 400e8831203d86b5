namespace CalibGeom.Tests.Shared;

/// <summary>Files of the repository that are made from the code, and must be what the code makes.</summary>
internal static class RepositoryFile
{
    /// <summary>Requires that a file holds exactly these bytes, or rewrites it when CALIBGEOM_UPDATE is 1.</summary>
    internal static void RequireHolds(string relativePath, byte[] expected)
    {
        string path = Path.Combine(Repository.Root, relativePath);
        if (Repository.Updating)
            File.WriteAllBytes(path, expected);
        Assert.True(
            File.Exists(path) && File.ReadAllBytes(path).AsSpan().SequenceEqual(expected),
            $"{relativePath} is not what the code makes. Run the tests once with CALIBGEOM_UPDATE=1 and look at "
                + $"what changed."
        );
    }
}
