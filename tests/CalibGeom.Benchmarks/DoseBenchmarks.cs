using System.Numerics;
using BenchmarkDotNet.Attributes;
using CalibGeom.Light;
using CalibGeom.Meshes;
using CalibGeom.Slicing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Benchmarks;

/// <summary>
/// The light dose of the standard preset at pixels of 35 and layers of 50 micrometres, as ratios to a vectorised loop D
/// = D q + M over the same rasters. Each layer's raster M is drawn from its runs before its turn, in both.
/// </summary>
[MemoryDiagnoser]
[ShortRunJob]
public class DoseBenchmarks
{
    private const float Transmission = 0.66f;
    private readonly LayerLight light = new(new WorkingCurve(0.12, 8), 4, 2.5, 0.05);
    private TriangleMesh mesh = TriangleMesh.Empty;
    private PixelGrid grid = new(default, 1, 1, 1, 1);
    private MaskStack masks = null!;
    private float[][] rasters = [];
    private float[] dose = [];

    /// <summary>Makes the object, its masks, and rasters of 16 of its layers, spread over its height.</summary>
    [GlobalSetup]
    public void Setup()
    {
        mesh = TestObject.Of(Presets.Standard).ToMesh();
        grid = PixelGrid.Covering(mesh.Bounds, 0.035, 0.035, 4);
        masks = MaskStack.Of(mesh, grid, 0.05);
        dose = new float[grid.Width * grid.Height];
        rasters = [.. Enumerable.Range(0, 16).Select(i => Raster(masks[i * masks.Count / 16]))];
    }

    /// <summary>
    /// The baseline: as many multiplications and additions as there are layers, over rasters that are in memory
    /// already.
    /// </summary>
    [Benchmark(Baseline = true)]
    public float Loop()
    {
        Array.Clear(dose);
        for (int layer = masks.Count - 1; layer >= 0; layer--)
            MultiplyAdd(dose, rasters[layer * rasters.Length / masks.Count]);
        return dose[dose.Length / 2];
    }

    /// <summary>Blur, dose and accumulation of all layers from their masks.</summary>
    [Benchmark]
    public float Dose() => Sweep(masks);

    /// <summary>The same, and slicing the mesh and lighting its pixels.</summary>
    [Benchmark]
    public float SliceMaskAndDose() => Sweep(MaskStack.Of(mesh, grid, 0.05));

    /// <summary>The same with grey levels.</summary>
    [Benchmark]
    public float SliceGreyAndDose() => Sweep(MaskStack.Of(mesh, grid, 0.05, grey: true));

    private float Sweep(MaskStack stack)
    {
        float sum = 0;
        foreach (DoseLayer layer in new LightDose(stack, new GaussianBlur(0.02), light).Layers())
            sum += layer.Values[layer.Values.Length / 2];
        return sum;
    }

    private float[] Raster(CoverageRaster mask)
    {
        var pixels = new float[grid.Width * grid.Height];
        mask.CopyTo(pixels);
        return pixels;
    }

    private static void MultiplyAdd(float[] dose, float[] mask)
    {
        int i = 0;
        for (; i + Vector<float>.Count <= dose.Length; i += Vector<float>.Count)
            (new Vector<float>(dose, i) * Transmission + new Vector<float>(mask, i)).CopyTo(dose, i);
        for (; i < dose.Length; i++)
            dose[i] = dose[i] * Transmission + mask[i];
    }
}
