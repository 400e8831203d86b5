using BenchmarkDotNet.Attributes;
using CalibGeom.Formats.Stl;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Benchmarks;

/// <summary>The main job in this process: from a preset's spec to the bytes of its STL.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class MakeBenchmarks
{
    private TestObjectSpec spec = null!;

    /// <summary>The preset.</summary>
    [Params("standard", "witness", "fine", "coarse", "limit")]
    public string Preset { get; set; } = "";

    /// <summary>Looks the preset up.</summary>
    [GlobalSetup]
    public void Setup() => spec = Presets.Find(Preset)!.Spec;

    /// <summary>Spec to STL bytes.</summary>
    [Benchmark]
    public long Make()
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, TestObject.Of(spec).ToMesh(), "benchmark");
        return stream.Length;
    }
}
