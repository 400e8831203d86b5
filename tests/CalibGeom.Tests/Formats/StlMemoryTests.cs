using System.Runtime.InteropServices;
using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Formats;

/// <summary>
/// All that reading allocates, which bounds what it holds at once: at a million triangles 30 MB for a closed mesh, and
/// 120 MB when no two triangles share a corner, of which 84 MB are the mesh. Untouched room counts here as if it were
/// memory.
/// </summary>
public class StlMemoryTests
{
    private const long Fixed = 1 << 20;

    [Fact]
    public void AClosedMeshTakesAtMost35BytesATriangle() =>
        Assert.InRange(Allocated(Torus(0), triangles: 200_000, vertices: 100_000), 0, 35 * 200_000 + Fixed);

    [Fact]
    public void SeparateTrianglesTakeAtMost125BytesEach() =>
        Assert.InRange(Allocated(Torus(200_000), triangles: 200_000, vertices: 600_000), 0, 125 * 200_000 + Fixed);

    [Theory]
    [InlineData(20_000)]
    [InlineData(90_000)]
    [InlineData(190_000)]
    public void AnythingBetweenTakesNoMore(int separate) =>
        Assert.InRange(Allocated(Torus(separate), triangles: 200_000, vertices: null), 0, 125 * 200_000 + Fixed);

    /// <summary>A torus whose last triangles are torn off, each to a place of its own.</summary>
    private static byte[] Torus(int separate)
    {
        byte[] bytes = StlWriterTests.Bytes(SampleMeshes.Torus(90, 20, 500, 200));
        Span<StlFacet> facets = MemoryMarshal.Cast<byte, StlFacet>(bytes.AsSpan(84));
        for (int i = facets.Length - separate; i < facets.Length; i++)
            facets[i] = facets[i] with { AX = 3 * i, BX = 3 * i + 1, CX = 3 * i + 2 };
        return bytes;
    }

    private static long Allocated(byte[] bytes, int triangles, int? vertices)
    {
        using var stream = new MemoryStream(bytes);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var mesh = MeshFile.Read(stream, "large.stl").ToMesh();
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal(triangles, mesh.TriangleCount);
        if (vertices is { } expected)
            Assert.Equal(expected, mesh.VertexCount);
        return allocated;
    }
}
