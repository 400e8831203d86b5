using BenchmarkDotNet.Attributes;
using CalibGeom.Formats.Stl;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Benchmarks;

/// <summary>
/// A binary STL of one million triangles (a torus on the grid, 40 mm high): reading and welding it, its whole topology
/// with crossings, and its 1,000 layers of 0.04 mm, as ratios to <see cref="File.ReadAllBytes(string)"/> and a loop
/// over the same bytes.
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
        foreach (byte b in File.ReadAllBytes(path))
            sum += b;
        return sum;
    }

    /// <summary>Reading and welding.</summary>
    [Benchmark]
    public int ReadAndWeld() => StlReader.Read(path).VertexCount;

    /// <summary>Topology with self-intersection.</summary>
    [Benchmark]
    public bool Topology() => MeshTopology.Run(mesh).IsSound;

    /// <summary>Slices of 1,000 layers as exact polygons.</summary>
    [Benchmark]
    public double Slices()
    {
        var slicer = new LayerSlicer(mesh, 0.04);
        if (slicer.LayerCount != 1000)
            throw new InvalidOperationException($"The torus has {slicer.LayerCount} layers instead of 1,000.");
        return slicer.Slice().Sum(layer => layer.Area);
    }

    /// <summary>The same layers through all checks, with pixels of 0.035 mm.</summary>
    [Benchmark]
    public int Layers() => LayerInspection.Run(mesh, new LayerSettings { LayerHeight = 0.04 }).Layers.Count;
}
