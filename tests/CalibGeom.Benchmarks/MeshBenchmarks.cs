using BenchmarkDotNet.Attributes;
using CalibGeom.Formats;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;

namespace CalibGeom.Benchmarks;

/// <summary>
/// A binary STL of one million triangles (a torus on the grid): reading and welding it, and its whole topology with crossings, as ratios to
/// <see cref="File.ReadAllBytes(string)"/> and a loop over the same bytes.
/// </summary>
[MemoryDiagnoser]
[ShortRunJob]
public class MeshBenchmarks
{
    private string path = "";
    private TriangleMesh mesh = TriangleMesh.Empty;

    /// <summary>Writes the file.</summary>
    [GlobalSetup]
    public void Setup()
    {
        path = Path.Combine(Path.GetTempPath(), $"calibgeom-benchmark-{Environment.ProcessId}.stl");
        mesh = MillionTriangles.Torus();
        using FileStream file = File.Create(path);
        StlWriter.Write(file, mesh, "benchmark");
    }

    /// <summary>Removes the file.</summary>
    [GlobalCleanup]
    public void Cleanup() => File.Delete(path);

    /// <summary>The baseline.</summary>
    [Benchmark(Baseline = true)]
    public long ReadAllBytesAndLoop()
    {
        long sum = 0;
        foreach (byte b in File.ReadAllBytes(path)) sum += b;
        return sum;
    }

    /// <summary>Reading and welding.</summary>
    [Benchmark]
    public int ReadAndWeld() => StlReader.Read(path).VertexCount;

    /// <summary>Topology with self-intersection.</summary>
    [Benchmark]
    public bool Topology() => MeshTopology.Examine(mesh).IsSound;
}
