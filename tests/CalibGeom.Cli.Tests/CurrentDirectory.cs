namespace CalibGeom.Cli.Tests;

/// <summary>Tests that change the process's current directory run alone.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public class CurrentDirectory
{
    internal const string Name = "current directory";

    /// <summary>Does something within a folder and comes back.</summary>
    internal static void Within(TemporaryFolder folder, Action work)
    {
        string before = Directory.GetCurrentDirectory();
        try
        {
            Directory.SetCurrentDirectory(folder.Root);
            work();
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }
    }
}
