namespace CalibGeom.Cli.Tests;

/// <summary>The files of docs/samples: what the demo workshop has.</summary>
internal static class DemoSamples
{
    internal const string Folder = "docs/samples";

    internal static string PathOf(string name) => Path.Combine(Repository.Root, Folder, name);

    /// <summary>Does something in a folder that holds the samples and nothing else.</summary>
    internal static void Within(TemporaryFolder folder, Action work)
    {
        foreach (string sample in Directory.GetFiles(PathOf("")))
            File.Copy(sample, folder[Path.GetFileName(sample)]);
        CurrentDirectory.Within(folder, work);
    }
}
