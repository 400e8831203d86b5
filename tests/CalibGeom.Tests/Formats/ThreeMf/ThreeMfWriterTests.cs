using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;
using CalibGeom.Formats;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Formats.ThreeMf;

public class ThreeMfWriterTests
{
    private static readonly ThreeMfContent Content = new()
    {
        Title = "DEMO \"GREY\" <1>",
        Application = "CalibGeom 0.1.0",
        SpecJson = "{\r\n\t\"title\": \"A & B\"\n}",
    };

    [Fact]
    public void PartsAreThoseTheSpecificationAsksForInAFixedOrderWithoutATime()
    {
        using var zip = new ZipArchive(new MemoryStream(Bytes([new("part", SampleMeshes.Box(1, 2, 3))])));
        Assert.Equal(["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"], zip.Entries.Select(e => e.FullName));
        Assert.All(zip.Entries, e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime));
        XElement model = XDocument.Load(zip.Entries[2].Open()).Root!;
        XNamespace core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
        Assert.Equal(core + "model", model.Name);
        Assert.Equal("millimeter", model.Attribute("unit")?.Value);
        Assert.Equal(
            ["metadata", "metadata", "metadata", "resources", "build"],
            model.Elements().Select(e => e.Name.LocalName)
        );
        Assert.Equal("part", model.Descendants(core + "object").Single().Attribute("name")?.Value);
    }

    [Fact]
    public void TitleApplicationAndSpecComeBackAsTheyWere()
    {
        MeshFile file = MeshFile.Read(
            new MemoryStream(Bytes([new("a <b>\t\"c\"\n", SampleMeshes.Tetrahedron())])),
            "x"
        );
        Assert.Equal(
            (Content.Title, Content.Application, Content.SpecJson),
            (file.Metadata["Title"], file.Metadata["Application"], file.SpecJson)
        );
        Assert.Equal("a <b>\t\"c\"\n", file.Objects[0].Name);
        Assert.Empty(file.Dropped);
    }

    [Property(MaxTest = 60)]
    public Property WriteReadIsIdentityAndRepeatable() =>
        Prop.ForAll(
            Gen.OneOf(SampleMeshes.Soups(), SampleMeshes.Bodies()).Where(m => m.TriangleCount > 0).ToArbitrary(),
            mesh =>
            {
                List<MeshObject> objects = [new("first", mesh), new("", mesh.Transform(Affine3D.TurnX(33)))];
                List<MeshObject> used = [.. objects.Select(o => new MeshObject(o.Name, OnlyUsed(o.Mesh)))];
                byte[] written = Bytes(used);
                MeshFile read = MeshFile.Read(new MemoryStream(Bytes(objects)), "x");
                Assert.Equal(objects.Select(o => o.Name), read.Objects.Select(o => o.Name));
                for (int i = 0; i < 2; i++)
                    Same(used[i].Mesh, read.Objects[i].Mesh);
                CultureInfo before = CultureInfo.CurrentCulture;
                CultureInfo.CurrentCulture = new CultureInfo("de-DE");
                try
                {
                    Assert.Equal(written, Bytes(read.Objects));
                }
                finally
                {
                    CultureInfo.CurrentCulture = before;
                }
            }
        );

    [Fact]
    public void MeshesWithoutTrianglesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => Bytes([]));
        Assert.Throws<ArgumentException>(() => Bytes([new("empty", TriangleMesh.Empty)]));
    }

    /// <summary>Without the vertices that no triangle names, which a reader drops; the others in their order.</summary>
    private static TriangleMesh OnlyUsed(TriangleMesh mesh)
    {
        int[] used = [.. mesh.Triangles.ToArray().Distinct().Order()];
        if (used.Length < 3)
            return mesh;
        return new TriangleMesh(
            used.SelectMany(v => mesh.Coordinates.Slice(3 * v, 3).ToArray()).ToArray(),
            mesh.Triangles.ToArray().Select(v => Array.IndexOf(used, v)).ToArray()
        );
    }

    internal static void Same(TriangleMesh expected, TriangleMesh actual)
    {
        Assert.Equal(expected.Coordinates.ToArray(), actual.Coordinates.ToArray());
        Assert.Equal(expected.Triangles.ToArray(), actual.Triangles.ToArray());
    }

    private static byte[] Bytes(IReadOnlyList<MeshObject> objects)
    {
        using var stream = new MemoryStream();
        ThreeMfWriter.Write(stream, objects, Content);
        return stream.ToArray();
    }
}
