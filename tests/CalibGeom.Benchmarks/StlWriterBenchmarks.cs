using System.Runtime.InteropServices;
using BenchmarkDotNet.Attributes;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Benchmarks;

/// <summary>
/// Writing one million triangles as binary STL to memory, as a ratio to a plain loop over the same arrays without
/// normals.
/// </summary>
[ShortRunJob]
public class StlWriterBenchmarks
{
    private const int Block = 50 * 1300;

    private readonly MemoryStream stream = new(64 << 20);
    private readonly byte[] buffer = new byte[Block];
    private TriangleMesh mesh = TriangleMesh.Empty;
    private float[] corners = [];
    private int[] triangles = [];

    /// <summary>Makes the arrays.</summary>
    [GlobalSetup]
    public void Setup()
    {
        mesh = MillionTriangles.Torus();
        corners = [.. mesh.Coordinates.ToArray().Select(c => (float)c)];
        triangles = mesh.Triangles.ToArray();
    }

    /// <summary>The baseline.</summary>
    [Benchmark(Baseline = true)]
    public long PlainLoop()
    {
        stream.Position = 0;
        stream.Write(buffer, 0, 84);
        int at = 0;
        for (int i = 0; i < triangles.Length; i += 3, at += 50)
        {
            if (at == Block)
            {
                stream.Write(buffer, 0, at);
                at = 0;
            }
            for (int k = 0; k < 3; k++)
                MemoryMarshal.AsBytes(corners.AsSpan(3 * triangles[i + k], 3)).CopyTo(buffer.AsSpan(at + 12 + 12 * k));
        }
        stream.Write(buffer, 0, at);
        return stream.Position;
    }

    /// <summary>The writer, normals included.</summary>
    [Benchmark]
    public long Writer()
    {
        stream.Position = 0;
        StlWriter.Write(stream, mesh, "benchmark");
        return stream.Position;
    }
}
