using System.Runtime.InteropServices;
using CalibGeom.Formats;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Formats;

/// <summary>
/// All that reading allocates, which bounds what it holds at once: at a million triangles 50 MB for a closed mesh, and 180 MB when no two
/// triangles share a corner.
/// </summary>
public class StlMemoryTests
{
    private const long Fixed = 1 << 20;

    [Fact]
    public void AClosedMeshTakesAtMost50BytesATriangle()
    {
        byte[] bytes = StlWriterTests.Bytes(SampleMeshes.Torus(90, 20, 500, 200));
        Assert.InRange(Allocated(bytes, triangles: 200_000, vertices: 100_000), 0, 50 * 200_000 + Fixed);
    }

    [Fact]
    public void SeparateTrianglesTakeAtMost180BytesEach()
    {
        byte[] bytes = StlWriterTests.Bytes(SampleMeshes.Torus(90, 20, 500, 200));
        Span<StlFacet> facets = MemoryMarshal.Cast<byte, StlFacet>(bytes.AsSpan(84));
        for (int i = 0; i < facets.Length; i++)
            facets[i] = facets[i] with { AX = 3 * i, BX = 3 * i + 1, CX = 3 * i + 2 };
        Assert.InRange(Allocated(bytes, triangles: 200_000, vertices: 600_000), 0, 180 * 200_000 + Fixed);
    }

    private static long Allocated(byte[] bytes, int triangles, int vertices)
    {
        using var stream = new MemoryStream(bytes);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var mesh = MeshFile.Read(stream, "large.stl").ToMesh();
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal((triangles, vertices), (mesh.TriangleCount, mesh.VertexCount));
        return allocated;
    }
}
