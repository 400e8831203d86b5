using System.Security.Cryptography;
using CalibGeom.Formats.Stl;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>
/// generated/geometry.txt remembers what every geometry version made of every preset's spec. Lines are only ever added:
/// another geometry of the same spec needs another version in the header of its files.
/// </summary>
public class GeometryVersionTests
{
    private const string Remembered = "generated/geometry.txt";

    [Fact]
    public void AnotherGeometryOfTheSameSpecHasAnotherVersion()
    {
        string path = Path.Combine(Repository.Root, Remembered);
        string[] lines = File.Exists(path) ? File.ReadAllLines(path) : [];
        foreach (Preset preset in Presets.All)
        {
            string line = LineOf(ObjectHeader.GeometryVersion, SpecDigest.Of(preset.Spec), preset.Spec);
            string[] next = Remember(lines, line);
            Assert.True(
                next.Length == lines.Length || Repository.Updating,
                $"{Remembered} does not know {preset.Name}. Run the tests once with CALIBGEOM_UPDATE=1."
            );
            lines = next;
        }
        if (Repository.Updating)
            File.WriteAllText(path, string.Join('\n', lines) + "\n");
    }

    [Fact]
    public void ARememberedGeometryCannotBeReplaced()
    {
        string[] known = ["1 aaaa 1111", "1 bbbb 2222"];
        Assert.Equal(known, Remember(known, "1 bbbb 2222"));
        Assert.Equal([.. known, "2 bbbb 3333"], Remember(known, "2 bbbb 3333"));
        Assert.Throws<InvalidOperationException>(() => Remember(known, "1 bbbb 3333"));
    }

    /// <summary>
    /// The lines with one more, unless they have it; another geometry under a known version and spec is refused.
    /// </summary>
    private static string[] Remember(string[] lines, string line)
    {
        string key = line[..(line.LastIndexOf(' ') + 1)];
        string? known = Array.Find(lines, l => l.StartsWith(key, StringComparison.Ordinal));
        return known is null ? [.. lines, line]
            : known == line ? lines
            : throw new InvalidOperationException(
                $"The geometry of spec and version \"{key.Trim()}\" has changed. Raise ObjectHeader.GeometryVersion."
            );
    }

    private static string LineOf(int version, string digest, TestObjectSpec spec)
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, TestObject.Of(spec).ToMesh(), "test");
        // What follows the header: the triangles.
        byte[] hash = SHA256.HashData(stream.ToArray().AsSpan(80));
        return $"{version} {digest} {Convert.ToHexStringLower(hash)[..16]}";
    }
}
