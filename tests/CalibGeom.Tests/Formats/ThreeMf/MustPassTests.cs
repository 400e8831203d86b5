using System.Text;
using CalibGeom.Formats;

namespace CalibGeom.Tests.Formats.ThreeMf;

/// <summary>
/// What cannot change the geometry is noted and read on: cases of our own for the MUSTPASS files' rules (chapter 3.4.1c
/// and the byte order mark that nine of them begin with) and for what programs write.
/// </summary>
public class MustPassTests
{
    private const string Relationship =
        "<Relationship Target=\"/3D/3dmodel.model\" Id=\"rel0\" "
        + "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/>";

    [Fact]
    public void AByteOrderMarkIsNoPartOfTheText()
    {
        foreach (string part in Package.Parts().Keys.ToArray())
        {
            Dictionary<string, string> parts = Package.Parts();
            parts[part] = "\uFEFF" + parts[part];
            MeshFile file = Package.Read(Package.Zip(parts));
            Assert.Equal(12, file.ToMesh().TriangleCount);
            Assert.Empty(file.Dropped);
        }
    }

    [Theory]
    [InlineData("3.4.1c undefined metadata name", "\"Title\"", "\"Colour\"", "metadata with unknown names")]
    [InlineData("printable items", "item objectid=\"1\"", "item objectid=\"1\" printable=\"1\"", "printable")]
    [InlineData("an attribute of the build", "<build>", "<build when=\"now\">", "no attribute when")]
    [InlineData("a painted triangle", "<triangle v1=\"3\"", "<triangle paint_color=\"4\" v1=\"3\"", "paint_color")]
    [InlineData(
        "colour required",
        "xml:lang",
        "requiredextensions=\"m\" xmlns:m=\"http://schemas.microsoft.com/3dmanufacturing/material/2015/02\" xml:lang",
        "only colour"
    )]
    public void IsNotedAndRead(string name, string old, string replacement, string note)
    {
        MeshFile file = Package.Read(Package.With(old, replacement));
        Assert.Equal(6000, file.ToMesh().Volume, 1e-9);
        string said = Assert.Single(file.Dropped);
        Assert.True(said.Contains(note, StringComparison.Ordinal), $"{name}: \"{said}\" does not say \"{note}\"");
        Assert.False(file.IsDamaged, name);
    }

    /// <summary>The rule of MUSTFAIL 2.1.3: told, but no reason to refuse a mesh that is whole.</summary>
    [Fact]
    public void AThumbnailThatIsNotThereIsNoted()
    {
        Dictionary<string, string> parts = Package.Parts();
        parts["_rels/.rels"] = parts["_rels/.rels"]
            .Replace(
                Relationship,
                Relationship
                    + "<Relationship Target=\"/Metadata/thumbnail.png\" Id=\"rel1\" "
                    + "Type=\"http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail\"/>",
                StringComparison.Ordinal
            );
        MeshFile file = Package.Read(Package.Zip(parts));
        Assert.Equal(12, file.ToMesh().TriangleCount);
        Assert.Contains(
            "there is no part \"Metadata/thumbnail.png\"",
            Assert.Single(file.Dropped),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AnAttributeOfAnotherNamespaceIsNoFault()
    {
        MeshFile file = Package.Read(
            Package.With(
                "<triangle v1=\"3\"",
                "<triangle xmlns:o=\"http://schemas.example/o\" o:support=\"4\" v1=\"3\""
            )
        );
        Assert.Equal(12, file.ToMesh().TriangleCount);
        Assert.Empty(file.Dropped);
    }

    [Fact]
    public void AnotherEncodingIsRefusedStill()
    {
        Dictionary<string, string> parts = Package.Parts();
        string model = parts["3D/3dmodel.model"];
        Assert.Contains("UTF-8", model, StringComparison.Ordinal);
        Assert.Equal(3, Encoding.UTF8.GetByteCount("\uFEFF"));
        parts["3D/3dmodel.model"] = "\uFEFF" + model.Replace("UTF-8", "utf-16", StringComparison.Ordinal);
        Assert.Throws<InputException>(() => Package.Read(Package.Zip(parts)));
    }
}
