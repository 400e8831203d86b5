using System.Runtime.InteropServices;
using System.Text;
using CalibGeom.Formats;
using CalibGeom.Formats.Obj;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Formats;

public class MeshFileTests
{
    private static readonly byte[] Box = StlWriterTests.Bytes(SampleMeshes.Box(1, 2, 3));

    [Fact]
    public void ABinaryStlWhoseHeaderSaysSolidIsBinary()
    {
        byte[] bytes = [.. Box];
        Encoding.ASCII.GetBytes("solid facet normal 0 0 1").CopyTo(bytes, 0);
        MeshFile file = MeshFile.Read(new MemoryStream(bytes), "x");
        Assert.Equal((MeshFormat.StlBinary, 12), (file.Format, file.ToMesh().TriangleCount));
        Array.Resize(ref bytes, 600);
        Assert.Contains("ends at byte 600", Error(bytes).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingTellsHowFarItIs()
    {
        TriangleMesh mesh = SampleMeshes.Torus(9, 2, 100, 80);
        using MemoryStream obj = new(),
            threeMf = new();
        ObjWriter.Write(obj, [new("torus", mesh)]);
        ThreeMfWriter.Write(threeMf, [new("torus", mesh)], new() { Title = "torus" });
        foreach (byte[] bytes in new[] { StlWriterTests.Bytes(mesh), obj.ToArray(), threeMf.ToArray() })
        {
            var seen = new Watcher();
            Assert.Equal(
                mesh.TriangleCount,
                MeshFile.Read(new MemoryStream(bytes), "x", false, seen).ToMesh().TriangleCount
            );
            Assert.Equal(seen.Order(), seen);
            Assert.InRange(seen.Count, 4, 1000);
            Assert.Equal(1, seen[^1]);
        }
    }

    private sealed class Watcher : List<double>, IProgress<double>
    {
        public void Report(double value) => Add(value);
    }

    [Theory]
    [InlineData("", "is empty")]
    [InlineData("{ \"title\": \"x\" }", "neither ASCII STL nor OBJ")]
    [InlineData("PK", "truncated")]
    [InlineData("\0\0", "2 bytes")]
    public void WhatIsNoMeshIsSaidToBeNone(string content, string part)
    {
        byte[] bytes = Encoding.Latin1.GetBytes(content);
        Assert.Contains(part, Error(bytes).Message, StringComparison.Ordinal);
        Assert.Throws<InputException>(() => MeshFile.Read(new MemoryStream(bytes), "x", lenient: true));
    }

    [Theory]
    [InlineData(600, 10, "file ends that hold no whole facet: 1 (first: byte 584 of 600; 12 facets declared, 10 read)")]
    [InlineData(634, 11, "wrong facet counts: 1 (first: byte 80 declares 12 facets, the file holds 11)")]
    [InlineData(734, 13, "wrong facet counts: 1 (first: byte 80 declares 12 facets, the file holds 13)")]
    [InlineData(699, 12, "file ends that hold no whole facet: 1 (first: byte 684 of 699; 12 facets declared, 12 read)")]
    public void LenientReadingTakesWholeFacetsOfABinaryStl(int length, int facets, string said)
    {
        byte[] bytes = [.. Box];
        Array.Resize(ref bytes, length);
        Assert.Throws<InputException>(() => MeshFile.Read(new MemoryStream(bytes), "x"));
        MeshFile file = MeshFile.Read(new MemoryStream(bytes), "x", lenient: true);
        Assert.Equal(facets, file.ToMesh().TriangleCount);
        Assert.Equal(said, Assert.Single(file.Dropped));
    }

    [Fact]
    public void LenientReadingDropsFacetsThatAreNotFiniteAndKeepsThoseWithABadNormal()
    {
        byte[] bytes = [.. Box];
        float nan = float.NaN;
        MemoryMarshal.Write(bytes.AsSpan(84 + 50 * 2), in nan);
        MemoryMarshal.Write(bytes.AsSpan(84 + 50 * 5 + 20), in nan);
        MeshFile file = MeshFile.Read(new MemoryStream(bytes), "x", lenient: true);
        Assert.Equal(11, file.ToMesh().TriangleCount);
        Assert.Equal(
            [
                "normals that are not finite numbers: 1 (first: facet 2 at byte 184)",
                "facets with corners that are not finite numbers: 1 (first: facet 5 at byte 334)",
            ],
            file.Dropped
        );
    }

    [Fact]
    public void AStreamThatCannotSeekIsReadToo()
    {
        using var pipe = new OneWay(Box);
        Assert.Equal(6, MeshFile.Read(pipe, "-").ToMesh().Volume, 1e-12);
    }

    [Fact]
    public void TextCoordinatesAreThoseOfTheBinaryForm()
    {
        string text =
            "solid t\nfacet normal 0 0 1\nouter loop\nvertex 0.1 0.2 0.3\nvertex 1.1 0.2 0.3\nvertex 0.1 1.2 "
            + "0.3\nendloop\nendfacet\nendsolid t\n";
        TriangleMesh mesh = MeshFile.Read(new MemoryStream(Encoding.ASCII.GetBytes(text)), "x").ToMesh();
        Assert.Equal(
            mesh.Coordinates.ToArray(),
            StlReader.Read(new MemoryStream(StlWriterTests.Bytes(mesh))).Coordinates.ToArray()
        );
    }

    private static InputException Error(byte[] bytes) =>
        Assert.Throws<InputException>(() => MeshFile.Read(new MemoryStream(bytes), "x"));

    private sealed class OneWay(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }
}
