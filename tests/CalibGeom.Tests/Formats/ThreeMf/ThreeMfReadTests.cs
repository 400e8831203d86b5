using System.Globalization;
using System.IO.Compression;
using CalibGeom.Formats;
using CalibGeom.Meshes;

namespace CalibGeom.Tests.Formats.ThreeMf;

public class ThreeMfReadTests
{
    // CHECKS.md 10.3, box.3mf: V 8, T 12, chi 2, volume 6000, area 2200.
    [Fact]
    public void SampleBox()
    {
        MeshFile file = Package.Read(Package.Zip(Package.Parts()));
        MeshObject box = Assert.Single(file.Objects);
        Assert.Equal((MeshFormat.ThreeMf, "Box", "Box"), (file.Format, box.Name, file.Metadata["Title"]));
        Assert.Equal(
            (8, 12, 2, true),
            (box.Mesh.VertexCount, box.Mesh.TriangleCount, box.Mesh.EulerCharacteristic, box.Mesh.IsClosed)
        );
        Assert.Equal(6000, box.Mesh.Volume, 1e-9);
        Assert.Equal(2200, box.Mesh.Area, 1e-9);
    }

    [Theory]
    [InlineData("micron", 0.001)]
    [InlineData("millimeter", 1)]
    [InlineData("centimeter", 10)]
    [InlineData("inch", 25.4)]
    [InlineData("foot", 304.8)]
    [InlineData("meter", 1000)]
    public void UnitsBecomeMillimetres(string unit, double millimetres)
    {
        TriangleMesh mesh = Package.Read(Package.With("millimeter", unit)).ToMesh();
        Assert.Equal(30 * millimetres, mesh.Bounds.Size.Z, 1e-12 * millimetres);
        Assert.Equal(unit == "micron" ? 0.01 : 10 * millimetres, mesh.Bounds.Size.X);
    }

    [Fact]
    public void ComponentsAndItemsAreTransformedInnermostFirst()
    {
        // The component turns the box by 90 degrees about z and shifts it by 100 in x; the item doubles it and shifts
        // by 1 in y.
        MeshObject placed = Assert.Single(
            Package
                .Read(
                    Package.With(
                        "</resources><build><item objectid=\"1\"/>",
                        "<object id=\"2\" name=\"pair\"><components><component objectid=\"1\" transform=\"0 1 0 "
                            + "-1 0 0 0 0 1 100 0 0\"/><component objectid=\"1\"/></components></object></resources>"
                            + "<build><item objectid=\"2\" transform=\"2 0 0 0 2 0 0 0 2 0 1 0\"/>"
                    )
                )
                .Objects
        );
        Assert.Equal(("pair", 24, 2), (placed.Name, placed.Mesh.TriangleCount, placed.Mesh.ComponentCount));
        Assert.Equal(2 * 8 * 6000, placed.Mesh.Volume, 1e-6);
        Assert.Equal(new Box3D(new(0, 1, 0), new(200, 41, 60)), placed.Mesh.Bounds);
        var turned = new TriangleMesh(placed.Mesh.Coordinates[..24], placed.Mesh.Triangles[..36]);
        Assert.Equal(new Box3D(new(160, 1, 0), new(200, 21, 60)), turned.Bounds);
    }

    [Fact]
    public void AMirrorKeepsOutwardOutward()
    {
        MeshFile file = Package.Read(
            Package.With("item objectid=\"1\"", "item objectid=\"1\" transform=\"-1 0 0 0 1 0 0 0 1 0 0 0\"")
        );
        Assert.Equal(6000, file.ToMesh().Volume, 1e-9);
    }

    [Fact]
    public void SeveralObjectsKeepTheirNamesAndOrder()
    {
        MeshFile file = Package.Read(
            Package.With(
                "</resources><build>",
                $"<object id=\"7\" name=\"Second &amp; last\">{Package.Box}</object><object id=\"8\" "
                    + $"type=\"support\">{Package.Box}</object></resources>"
                    + "<build><item objectid=\"7\" transform=\"1 0 0 0 1 0 0 0 1 50 0 0\"/><item objectid=\"8\"/>"
            )
        );
        Assert.Equal(["Second & last", "Box"], file.Objects.Select(o => o.Name));
        Assert.Contains("type support", Assert.Single(file.Dropped), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatTheSpecificationAllowsIsNoFault()
    {
        MeshFile file = Package.Read(
            Package.With(
                "<object id=\"1\"",
                "<basematerials id=\"5\"><base name=\"grey\" displaycolor=\"#80808080\"/></basematerials><!-- "
                    + "note --><object pid=\"5\" pindex=\"0\" id=\"1\""
            )
        );
        Assert.Empty(file.Dropped);
        MeshFile extended = Package.Read(
            Package.With(
                "<object id=\"1\"",
                "<m:colorgroup xmlns:m=\"http://schemas.example/material\" id=\"3\"><m:color "
                    + "color=\"#000000\"/></m:colorgroup><object pid=\"3\" id=\"1\""
            )
        );
        Assert.Contains("elements of the extension", Assert.Single(extended.Dropped), StringComparison.Ordinal);
        MeshFile sets = Package.Read(
            Package.With(
                "</triangles>",
                "</triangles><t:trianglesets "
                    + "xmlns:t=\"http://schemas.microsoft.com/3dmanufacturing/trianglesets/2021/07\"/>"
            )
        );
        Assert.Empty(sets.Dropped);
        foreach (CompressionLevel level in new[] { CompressionLevel.NoCompression, CompressionLevel.SmallestSize })
            Assert.Equal(12, Package.Read(Package.Zip(Package.Parts(), level)).ToMesh().TriangleCount);
    }

    [Fact]
    public void LenientReadingOfABrokenOffModelTakesWholeObjects()
    {
        byte[] bytes = Package.WithModel(Package.Model[..Package.Model.IndexOf("<build>", StringComparison.Ordinal)]);
        Assert.Throws<InputException>(() => Package.Read(bytes));
        MeshFile file = Package.Read(bytes, lenient: true);
        Assert.Equal(12, Assert.Single(file.Objects).Mesh.TriangleCount);
        Assert.StartsWith("models that break off: 1", Assert.Single(file.Dropped), StringComparison.Ordinal);
    }

    [Fact]
    public void LenientReadingDropsTrianglesWithBrokenVertices()
    {
        MeshFile file = Package.Read(
            Package.With("vertex x=\"0\" y=\"0\" z=\"30\"", "vertex x=\"NaN\" y=\"0\" z=\"30\""),
            lenient: true
        );
        Assert.Equal(7, file.ToMesh().TriangleCount);
        Assert.Equal(2, file.Dropped.Count);
    }

    [Fact]
    public void AChangedByteInAPartIsFoundByItsChecksum()
    {
        byte[] bytes = Package.Zip(Package.Parts(), CompressionLevel.NoCompression);
        int at = bytes.AsSpan().IndexOf("z=\"30\""u8);
        bytes[at + 3] = (byte)'4';
        Assert.Contains(
            "does not match its checksum",
            Assert.Throws<InputException>(() => Package.Read(bytes)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AZipBombEndsInAnError()
    {
        byte[] bomb = Package.WithModel(
            Package.Model.Replace(
                "<resources>",
                "<metadata name=\"Designer\">" + new string(' ', 20_000_000) + "</metadata><resources>",
                StringComparison.Ordinal
            )
        );
        Assert.True(bomb.Length < 200_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Contains(
            "a zip bomb",
            Assert.Throws<InputException>(() => Package.Read(bomb)).Message,
            StringComparison.Ordinal
        );
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 100_000_000);
    }

    [Theory]
    [InlineData(40, 1)]
    [InlineData(16, 40)]
    public void ComponentsThatMultiplyWithoutEndEndInAnError(int doublings, int items)
    {
        string objects = string.Concat(
            Enumerable
                .Range(2, doublings)
                .Select(i =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"<object id=\"{i}\"><components><component objectid=\"{i - 1}\"/><component "
                            + $"objectid=\"{i - 1}\"/></components></object>"
                    )
                )
        );
        string build = string.Concat(Enumerable.Repeat($"<item objectid=\"{doublings + 1}\"/>", items));
        byte[] bytes = Package.With("</resources><build>", objects + "</resources><build>" + build);
        Assert.Contains(
            "more than 1000000 instances",
            Assert.Throws<InputException>(() => Package.Read(bytes)).Message,
            StringComparison.Ordinal
        );
    }
}
