namespace CalibGeom.Tests.Shared;

/// <summary>A folder that vanishes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    internal string Root { get; } = Directory.CreateTempSubdirectory("calibgeom-").FullName;

    internal string this[string name] => Path.Combine(Root, name);

    internal string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
