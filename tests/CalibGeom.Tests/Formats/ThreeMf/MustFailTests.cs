namespace CalibGeom.Tests.Formats.ThreeMf;

/// <summary>
/// A case of our own for each rule named by the MUSTFAIL files (names in CHECKS.md 10.3; 2.1.3, a thumbnail that is not
/// there, is among <see cref="MustPassTests"/>: it is told, and the mesh is read) and for the rules of CHECKS.md 10.2
/// (3MF core specification 1.4.0). Each is the sample box with one thing wrong; strict reading must refuse it and say
/// what it is.
/// </summary>
public class MustFailTests
{
    private const string Relationship =
        "<Relationship Target=\"/3D/3dmodel.model\" Id=\"rel0\" "
        + "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/>";
    private const string Tickets =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?><Relationships "
        + "xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
        + "<Relationship Target=\"/3D/a.xml\" Id=\"a\" "
        + "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/printticket\"/>"
        + "<Relationship Target=\"/3D/b.xml\" Id=\"b\" "
        + "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/printticket\"/></Relationships>";

    [Fact]
    public void TheSampleItselfIsRead() =>
        Assert.Equal(12, Package.Read(Package.Zip(Package.Parts())).ToMesh().TriangleCount);

    [Theory]
    [InlineData("2.1.1a NonExist3DModelPart", Relationship, "", "names no 3D model")]
    [InlineData(
        "2.1.1a target is not there",
        "/3D/3dmodel.model",
        "/3D/other.model",
        "there is no part \"3D/other.model\""
    )]
    [InlineData(
        "2.1.1b LinkToExternal",
        "Target=\"/3D/3dmodel.model\"",
        "TargetMode=\"External\" Target=\"file:///etc/x.model\"",
        "lies outside of the package"
    )]
    [InlineData(
        "2.1.2 MoreThanOne3DModelPart",
        Relationship,
        Relationship
            + "<Relationship Target=\"/3D/second.model\" Id=\"rel9\" "
            + "Type=\"http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel\"/>",
        "names 2 models"
    )]
    [InlineData("a path out of the package", "/3D/3dmodel.model", "/../../3dmodel.model", "leads out of the package")]
    [InlineData("one relationship twice", Relationship, Relationship + Relationship, "twice for one purpose")]
    public void Relationships(string name, string old, string replacement, string message)
    {
        Dictionary<string, string> parts = Package.Parts();
        parts["3D/second.model"] = Package.Model;
        parts["_rels/.rels"] = parts["_rels/.rels"].Replace(old, replacement, StringComparison.Ordinal);
        Refused(name, Package.Zip(parts), message);
    }

    [Theory]
    [InlineData("2.1.4 MoreThanOnePrintTicket", "3D/_rels/3dmodel.model.rels", Tickets, "more than one print ticket")]
    [InlineData("part name with a leading period", "3D/.hidden", "x", "is no name of a part")]
    [InlineData("part name out of the package", "../evil.model", "x", "is no name of a part")]
    [InlineData("part name with a backslash", "3D\\evil.model", "x", "is no name of a part")]
    [InlineData("part name twice but for case", "3D/3DMODEL.model", "x", "is there twice")]
    [InlineData(
        "no content type for the model",
        "[Content_Types].xml",
        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"/>",
        "does not name application/vnd.ms-package"
    )]
    [InlineData("no content types", "[Content_Types].xml", null, "has no [Content_Types].xml")]
    [InlineData("no relationships", "_rels/.rels", null, "has no _rels/.rels")]
    public void Parts(string name, string part, string? content, string message)
    {
        Dictionary<string, string> parts = Package.Parts();
        parts["3D/a.xml"] = parts["3D/b.xml"] = "<x/>";
        if (content is null)
            parts.Remove(part);
        else
            parts[part] = content;
        Refused(name, Package.Zip(parts), message);
    }

    [Theory]
    [InlineData("2.3.2a NonUTF_Encoding", "encoding=\"UTF-8\"", "encoding=\"utf-16\"", "UTF-8 only")]
    [InlineData(
        "2.3.2b DataTypeDefinition",
        "<model",
        "<!DOCTYPE model [<!ENTITY a \"x\">]><model",
        "DTD is prohibited"
    )]
    [InlineData(
        "2.3.2b external entity",
        "<model",
        "<!DOCTYPE model SYSTEM \"file:///etc/passwd\"><model",
        "DTD is prohibited"
    )]
    [InlineData(
        "2.3.2c attribute of the xsi namespace",
        "<build>",
        "<build xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" xsi:type=\"x\">",
        "xsi:type is not allowed"
    )]
    [InlineData(
        "2.3.2d attribute of the xml namespace",
        "<build>",
        "<build xml:base=\"x\">",
        "xml:base is not allowed"
    )]
    [InlineData("2.3.4 WhiteSpace", "<resources>", "<resources xml:space=\"preserve\">", "xml:space is not allowed")]
    [InlineData("3.4a MoreThanOneModel", "</model>", "</model><model/>", "multiple root elements")]
    [InlineData("3.4b MissingBuild", "<build><item objectid=\"1\"/></build>", "", "has no <build>")]
    [InlineData("two builds", "</build>", "</build><build/>", "<build> is out of place")]
    [InlineData("wrong namespace", "core/2015/02", "core/2015/03", "the root is <model>")]
    [InlineData("an unknown element", "<build>", "<built/><build>", "no element here called built")]
    [InlineData("unknown unit", "millimeter", "furlong", "\"furlong\" is no unit")]
    [InlineData(
        "required extension",
        "xml:lang",
        "requiredextensions=\"b\" xmlns:b=\"http://schemas.example/beams\" xml:lang",
        "requires the extension"
    )]
    [InlineData("not well formed", "</resources>", "</resource>", "3D/3dmodel.model:2:")]
    [InlineData("cut off", "<item objectid=\"1\"/></build></model>", "", "3D/3dmodel.model:2:")]
    [InlineData(
        "metadata after resources",
        "<build>",
        "<metadata name=\"Designer\">x</metadata><build>",
        "<metadata> is out of place"
    )]
    [InlineData("3.4.1a MissingMetadataName", "<metadata name=\"Title\">", "<metadata>", "metadata without a name")]
    [InlineData(
        "3.4.1b DuplicatedMetadataName",
        "<resources>",
        "<metadata name=\"Title\">x</metadata><resources>",
        "\"Title\" is there twice"
    )]
    public void TheModel(string name, string old, string replacement, string message) =>
        Refused(name, Package.With(old, replacement), message);

    [Fact]
    public void MissingResource() =>
        Refused(
            "3.4c MissingResource",
            Package.WithModel("<model xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\"/>"),
            "has no <resources>"
        );

    [Theory]
    [InlineData(
        "3.4.3.1a NotMatchingObjectId",
        "item objectid=\"1\"",
        "item objectid=\"2\"",
        "names object 2, which is not defined before it"
    )]
    [InlineData("3.4.3.1b item of type other", "type=\"model\"", "type=\"other\"", "may not be of type \"other\"")]
    [InlineData("4a InvalidObjectType", "type=\"model\"", "type=\"solid\"", "\"solid\" is no object type")]
    [InlineData("4b PID_IsNotSpecified", "type=\"model\"", "pindex=\"0\"", "pindex without pid")]
    [InlineData("pid without a property group", "type=\"model\"", "pid=\"7\"", "pid 7 names no property group")]
    [InlineData(
        "pid on a triangle without a property group",
        "<triangle v1=\"3\"",
        "<triangle pid=\"7\" v1=\"3\"",
        "pid 7 names no property group"
    )]
    [InlineData(
        "5a DuplicatedBaseMaterials",
        "<object id",
        "<basematerials id=\"5\"><base name=\"a\" displaycolor=\"#FF0000\"/></basematerials><basematerials "
            + "id=\"5\"><base name=\"a\" displaycolor=\"#FF0000\"/></basematerials><object id",
        "resource id 5 is used twice"
    )]
    [InlineData(
        "display colour",
        "<object id",
        "<basematerials id=\"5\"><base name=\"a\" displaycolor=\"red\"/></basematerials><object id",
        "#RRGGBB"
    )]
    [InlineData(
        "object id used twice",
        "</resources>",
        "<object id=\"1\"><components><component objectid=\"1\"/></components></object></resources>",
        "resource id 1 is used twice"
    )]
    [InlineData("id zero", "object id=\"1\"", "object id=\"0\"", "id must be a whole number")]
    [InlineData("id of 2^31", "object id=\"1\"", "object id=\"2147483648\"", "id must be a whole number")]
    [InlineData(
        "component of itself",
        "</resources>",
        "<object id=\"2\"><components><component objectid=\"2\"/></components></object></resources>",
        "names object 2, which is not defined before it"
    )]
    [InlineData(
        "object without content",
        "</resources>",
        "<object id=\"2\"/></resources>",
        "neither a mesh nor components"
    )]
    [InlineData(
        "components without one",
        "</resources>",
        "<object id=\"2\"><components/></object></resources>",
        "without a component"
    )]
    [InlineData(
        "transform of eleven numbers",
        "item objectid=\"1\"",
        "item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 0 0\"",
        "12 finite numbers"
    )]
    [InlineData(
        "transform with a comma",
        "item objectid=\"1\"",
        "item objectid=\"1\" transform=\"1 0 0 0 1 0 0 0 1 0 0 0,5\"",
        "12 finite numbers"
    )]
    [InlineData(
        "NaN",
        "vertex x=\"0\" y=\"0\" z=\"30\"",
        "vertex x=\"NaN\" y=\"0\" z=\"30\"",
        "vertex 4 has not three finite numbers"
    )]
    [InlineData(
        "infinity",
        "vertex x=\"0\" y=\"0\" z=\"30\"",
        "vertex x=\"INF\" y=\"0\" z=\"30\"",
        "vertex 4 has not three finite numbers"
    )]
    [InlineData(
        "overflow",
        "vertex x=\"0\" y=\"0\" z=\"30\"",
        "vertex x=\"1e999\" y=\"0\" z=\"30\"",
        "vertex 4 has not three finite numbers"
    )]
    [InlineData(
        "decimal comma",
        "vertex x=\"0\" y=\"0\" z=\"30\"",
        "vertex x=\"0,5\" y=\"0\" z=\"30\"",
        "vertex 4 has not three finite numbers"
    )]
    [InlineData(
        "point without a digit after it",
        "vertex x=\"0\" y=\"0\" z=\"30\"",
        "vertex x=\"0.\" y=\"0\" z=\"30\"",
        "vertex 4 has not three finite numbers"
    )]
    [InlineData(
        "coordinate missing",
        "vertex x=\"0\" y=\"0\" z=\"30\"",
        "vertex x=\"0\" y=\"0\"",
        "vertex 4 has not three finite numbers"
    )]
    [InlineData(
        "vertex that does not exist",
        "v1=\"4\" v2=\"7\"",
        "v1=\"8\" v2=\"7\"",
        "triangle 11 names a vertex that is not among the 8"
    )]
    [InlineData(
        "triangles before vertices",
        "<vertices>",
        "<triangles><triangle v1=\"0\" v2=\"1\" v3=\"2\"/></triangles><vertices>",
        "no element here called triangles"
    )]
    public void Resources(string name, string old, string replacement, string message) =>
        Refused(name, Package.With(old, replacement), message);

    [Fact]
    public void AMeshWithoutTriangles()
    {
        string model =
            Package.Model[..Package.Model.IndexOf("<triangle ", StringComparison.Ordinal)]
            + "</triangles></mesh></object></resources><build><item objectid=\"1\"/></build></model>";
        Refused("no triangles", Package.WithModel(model), "8 vertices and 0 triangles");
    }

    private static void Refused(string name, byte[] bytes, string message)
    {
        string said = Assert.Throws<InputException>(() => Package.Read(bytes)).Message;
        Assert.True(said.Contains(message, StringComparison.Ordinal), $"{name}: \"{said}\" does not say \"{message}\"");
        Assert.StartsWith("test.3mf: ", said, StringComparison.Ordinal);
    }
}
