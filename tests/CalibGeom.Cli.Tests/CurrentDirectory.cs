namespace CalibGeom.Cli.Tests;

/// <summary>Tests that change the process's current directory run alone.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public class CurrentDirectory
{
    internal const string Name = "current directory";
}
