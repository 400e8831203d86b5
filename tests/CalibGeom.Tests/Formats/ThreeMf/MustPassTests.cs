using System.Text;
using CalibGeom.Formats;

namespace CalibGeom.Tests.Formats.ThreeMf;

/// <summary>
/// What cannot change the geometry is noted and read on: cases of our own for the MUSTPASS files' rules and for what
/// programs write. Of those files' names CHECKS.md 10.3 holds one, 3.4.1c, beside the byte order mark that nine of them
/// begin with; the other cases are the permissions of the specification's chapters 2 to 5 (CHECKS.md 10.2), so that a
/// file of another name meets one of them.
/// </summary>
public class MustPassTests
{
    private const string Relationship =
        "<Relationship Target=\"/3D/3dmodel.model\" Id=\"rel0\" "
        + "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/>";

    private const string AllMetadata =
        "<metadata name=\"Title\">Box</metadata><metadata name=\"Designer\">d</metadata><metadata name=\"Description\">"
        + "d</metadata><metadata name=\"Copyright\">c</metadata><metadata name=\"LicenseTerms\">l</metadata>"
        + "<metadata name=\"Rating\">r</metadata><metadata name=\"CreationDate\">2026-11-26</metadata>"
        + "<metadata name=\"ModificationDate\">2026-11-26</metadata><metadata name=\"Application\">a</metadata>";
    private const string Second = $"<object id=\"2\">{Package.Box}</object>";
    private const string Other = $"<object id=\"2\" type=\"other\">{Package.Box}</object>";
    private const string Nested =
        "<object id=\"2\"><components><component objectid=\"1\"/>"
        + "<component objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 50 0 0\"/></components></object>"
        + "<object id=\"3\"><components><component objectid=\"2\"/>"
        + "<component objectid=\"2\" transform=\"1 0 0 0 1 0 0 0 1 0 50 0\"/></components></object>"
        + "</resources><build><item objectid=\"3\"/>";
    private const string Materials =
        "<basematerials id=\"5\"><base name=\"grey\" displaycolor=\"#808080\"/>"
        + "<base name=\"clear\" displaycolor=\"#FFFFFF80\"/></basematerials>";

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

    /// <summary>The box of 6000 mm3, or as many as are placed, without a word.</summary>
    [Theory]
    [InlineData("2.3.2 a declaration without encoding", " encoding=\"UTF-8\"", "", 1)]
    [InlineData("2.3.4 remarks and white space", "<build>", "\n\t<!-- a <b> & c -->\r\n<build>\n", 1)]
    [InlineData("3.4 no unit is the millimetre", "unit=\"millimeter\" ", "", 1)]
    [InlineData(
        "3.4 a recommended extension",
        "xml:lang",
        "xmlns:q=\"http://schemas.example/q\" recommendedextensions=\"q\" xml:lang",
        1
    )]
    [InlineData("3.4.1 every name of metadata", "<metadata name=\"Title\">Box</metadata>", AllMetadata, 1)]
    [InlineData(
        "3.4.1 metadata of a namespace",
        "<metadata name=\"Title\">",
        "<metadata xmlns:q=\"http://schemas.example/q\" name=\"q:shelf\" preserve=\"1\" type=\"xs:string\">",
        1
    )]
    [InlineData("3.4.1 no metadata", "<metadata name=\"Title\">Box</metadata>", "", 1)]
    [InlineData("3.4.2 the largest number of an object", "id=\"1\"", "id=\"2147483647\"", 1)]
    [InlineData("3.4.3 an object that nothing places", "</resources>", Second + "</resources>", 1)]
    [InlineData(
        "3.4.3 an object placed twice",
        "</build>",
        "<item objectid=\"1\" partnumber=\"7 a\" transform=\"1 0 0 0 1 0 0 0 1 50 0 0\"/></build>",
        2
    )]
    [InlineData(
        "3.4.3 metadata of an item",
        "<item objectid=\"1\"/>",
        "<item objectid=\"1\"><metadatagroup><metadata name=\"Title\">a</metadata></metadatagroup></item>",
        1
    )]
    [InlineData(
        "3.3 a transform with exponents and signs",
        "<item objectid=\"1\"/>",
        "<item objectid=\"1\" transform=\"+1e0 0 0 0 10E-1 -0 0 0 1.0 5 .5 -.5e+1\"/>",
        1
    )]
    [InlineData("4 a kind that is the default", " type=\"model\"", "", 1)]
    [InlineData("4.1 solid support", "type=\"model\"", "type=\"solidsupport\"", 1)]
    [InlineData(
        "4.1 a part of kind other, in a whole",
        "</resources><build><item objectid=\"1\"/>",
        Other
            + "<object id=\"3\"><components><component objectid=\"1\"/></components></object></resources><build><item objectid=\"3\"/>",
        1
    )]
    [InlineData("4.2 components in components", "</resources><build><item objectid=\"1\"/>", Nested, 4)]
    [InlineData("4.3 number and picture of a part", "name=\"Box\"", "name=\"\" partnumber=\"x-1\"", 1)]
    [InlineData(
        "5 materials of an object and of triangles",
        "<object id=\"1\"",
        Materials + "<object pid=\"5\" pindex=\"1\" id=\"1\"",
        1
    )]
    [InlineData(
        "5 materials of a triangle's corners",
        "<triangle v1=\"3\"",
        "<triangle pid=\"5\" p1=\"0\" p2=\"1\" p3=\"0\" v1=\"3\"",
        1
    )]
    public void IsReadWithoutAWord(string name, string old, string replacement, int boxes)
    {
        string model = Package.Model.Replace(old, replacement, StringComparison.Ordinal);
        Assert.True(model != Package.Model, name);
        if (
            model.Contains("pid=\"5\"", StringComparison.Ordinal)
            && !model.Contains(Materials, StringComparison.Ordinal)
        )
            model = model.Replace("<resources>", "<resources>" + Materials, StringComparison.Ordinal);
        MeshFile file = Package.Read(Package.WithModel(model));
        Assert.Equal(boxes * 6000, file.ToMesh().Volume, 1e-6);
        Assert.Empty(file.Dropped);
    }

    /// <summary>Parts that a package may hold beside its model: ticket, picture, what must be kept.</summary>
    [Theory]
    [InlineData(
        "2.1.3 a thumbnail",
        "Metadata/thumbnail.png",
        "http://schemas.openxmlformats.org/package/2006/relationships/metadata/thumbnail"
    )]
    [InlineData(
        "2.1.4 a print ticket",
        "3D/ticket.xml",
        "http://schemas.microsoft.com/3dmanufacturing/2013/01/printticket"
    )]
    [InlineData(
        "2.1.5 what must be kept",
        "Secret/a.bin",
        "http://schemas.openxmlformats.org/package/2006/relationships/mustpreserve"
    )]
    [InlineData(
        "2.1 core properties",
        "docProps/core.xml",
        "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties"
    )]
    public void AnotherPartIsLeftAlone(string name, string part, string type)
    {
        Dictionary<string, string> parts = Package.Parts();
        parts[part] = "<x/>";
        string relation = $"<Relationship Target=\"/{part}\" Id=\"rel1\" Type=\"{type}\"/>";
        parts["_rels/.rels"] = parts["_rels/.rels"]
            .Replace(Relationship, Relationship + relation, StringComparison.Ordinal);
        MeshFile file = Package.Read(Package.Zip(parts));
        Assert.True(file.Dropped.Count == 0, $"{name}: {string.Join("; ", file.Dropped)}");
        Assert.Equal(6000, file.ToMesh().Volume, 1e-9);
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
