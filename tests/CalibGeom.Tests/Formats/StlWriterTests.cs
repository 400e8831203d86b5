using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Formats;

public class StlWriterTests
{
    // CHECKS.md 10.1: box 684 bytes, tetrahedron 284, empty 84.
    [Fact]
    public void SizesAreThoseOfTheFormat()
    {
        Assert.Equal(684, Bytes(SampleMeshes.Box(10, 20, 30)).Length);
        Assert.Equal(284, Bytes(SampleMeshes.Tetrahedron()).Length);
        Assert.Equal(84, Bytes(TriangleMesh.Empty).Length);
    }

    [Theory]
    [InlineData("standard 1 mm 0123456789abcdef", "standard 1 mm 0123456789abcdef")]
    [InlineData("solid block", "mesh solid block")]
    [InlineData(" SOLID", "mesh  SOLID")]
    [InlineData("5 \u00b5m\t", "5 ?m?")]
    public void HeaderIsPlainTextThatIsNotTakenForAscii(string header, string written)
    {
        byte[] bytes = Bytes(SampleMeshes.Tetrahedron(), header);
        Assert.Equal(written.PadRight(80), Encoding.Latin1.GetString(bytes, 0, 80));
        Assert.Equal(4, BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(80)));
    }

    [Fact]
    public void LongHeadersAreCut() =>
        Assert.Equal(
            new string('x', 80),
            Encoding.ASCII.GetString(Bytes(TriangleMesh.Empty, new string('x', 99)), 0, 80)
        );

    [Property(MaxTest = 100)]
    public Property NormalsAreUnitVectorsAndNeverNaN() =>
        Prop.ForAll(
            SampleMeshes.Soups().ToArbitrary(),
            mesh =>
            {
                ReadOnlySpan<StlFacet> facets = MemoryMarshal.Cast<byte, StlFacet>(Bytes(mesh).AsSpan(84));
                for (int t = 0; t < facets.Length; t++)
                {
                    (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
                    Vector3D normal = Vector3D.Cross(b - a, c - a);
                    Vector3D expected = normal.Length > 0 ? normal * (1 / normal.Length) : new(0, 0, 1);
                    var stored = new Vector3D(facets[t].NormalX, facets[t].NormalY, facets[t].NormalZ);
                    Assert.Equal(0, (stored - expected).Length, 1e-7);
                }
            }
        );

    /// <summary>Four numbers at a time give the bytes that one at a time gives, over blocks and their ends.</summary>
    [Property(MaxTest = 100)]
    public Property BlocksAreTheRecordsOfTheirCorners() =>
        Prop.ForAll(
            SampleMeshes.Soups().ToArbitrary(),
            soup =>
            {
                var mesh = TriangleMesh.Join([.. Enumerable.Repeat(soup, 1 + 700 / Math.Max(1, soup.TriangleCount))]);
                ReadOnlySpan<StlFacet> facets = MemoryMarshal.Cast<byte, StlFacet>(Bytes(mesh).AsSpan(84));
                Assert.Equal(mesh.TriangleCount, facets.Length);
                for (int t = 0; t < facets.Length; t++)
                {
                    (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
                    (float x, float y, float z) = Normal(Single(a), Single(b), Single(c));
                    Assert.Equal(
                        new StlFacet(
                            x,
                            y,
                            z,
                            F(a.X),
                            F(a.Y),
                            F(a.Z),
                            F(b.X),
                            F(b.Y),
                            F(b.Z),
                            F(c.X),
                            F(c.Y),
                            F(c.Z),
                            0
                        ),
                        facets[t]
                    );
                }
            }
        );

    private static float F(double value) => (float)value + 0f;

    private static Vector3D Single(Vector3D v) => new(F(v.X), F(v.Y), F(v.Z));

    /// <summary>The normal one number at a time, as a textbook writes it.</summary>
    private static (float X, float Y, float Z) Normal(Vector3D a, Vector3D b, Vector3D c)
    {
        Vector3D u = b - a,
            v = c - a;
        double x = u.Y * v.Z - u.Z * v.Y,
            y = u.Z * v.X - u.X * v.Z,
            z = u.X * v.Y - u.Y * v.X;
        double square = x * x + y * y + z * z;
        if (!(square > 0))
            return (0, 0, 1);
        double scale = 1 / Math.Sqrt(square);
        return ((float)(x * scale), (float)(y * scale), (float)(z * scale));
    }

    [Property(MaxTest = 100)]
    public Property WriteReadWriteGivesTheSameBytes() =>
        Prop.ForAll(
            Gen.OneOf(SampleMeshes.Soups(), SampleMeshes.Bodies()).ToArbitrary(),
            mesh =>
            {
                byte[] first = Bytes(mesh);
                TriangleMesh read = StlReader.Read(new MemoryStream(first));
                Assert.Equal(first, Bytes(read));
            }
        );

    [Property(MaxTest = 60)]
    public Property ReadingGivesTheWeldedMeshBack() =>
        Prop.ForAll(
            SampleMeshes.Soups().ToArbitrary(),
            mesh =>
            {
                TriangleMesh welded = mesh.Weld(),
                    read = StlReader.Read(new MemoryStream(Bytes(mesh)));
                Assert.Equal(welded.Coordinates.ToArray(), read.Coordinates.ToArray());
                Assert.Equal(welded.Triangles.ToArray(), read.Triangles.ToArray());
            }
        );

    [Fact]
    public void CoordinatesBeyondSinglePrecisionAreRefused()
    {
        TriangleMesh huge = new([0, 0, 0, 1e39, 0, 0, 0, 1, 0], [0, 1, 2]);
        Assert.Contains(
            "3.4e38",
            Assert.Throws<ArgumentException>(() => Bytes(huge)).Message,
            StringComparison.Ordinal
        );
    }

    internal static byte[] Bytes(TriangleMesh mesh, string header = "test mm")
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, mesh, header);
        return stream.ToArray();
    }
}
