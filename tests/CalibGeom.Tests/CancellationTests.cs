using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests;

/// <summary>Long work that is stopped while it reports its progress ends there and says so.</summary>
public class CancellationTests
{
    private static readonly TriangleMesh Mesh = TestObject.Of(Presets.Standard).ToMesh();

    [Fact]
    public void ReadingAMeshStops()
    {
        using var stl = new MemoryStream();
        StlWriter.Write(stl, Mesh, "a");
        stl.Position = 0;
        Stops((progress, token) => MeshFile.Read(stl, "a.stl", false, progress, token));
    }

    [Fact]
    public void TopologyStops() => Stops((progress, token) => MeshTopology.Run(Mesh, progress, token));

    [Fact]
    public void LayersStop() =>
        Stops((progress, token) => LayerInspection.Run(Mesh, new LayerSettings(), progress, token));

    [Fact]
    public void TheWholeInspectionStops() =>
        Stops((progress, token) => MeshInspection.Run(Mesh, null, null, progress, token));

    private static void Stops(Action<IProgress<double>, CancellationToken> work)
    {
        using var stop = new CancellationTokenSource();
        var progress = new StoppingProgress(stop);
        Assert.ThrowsAny<OperationCanceledException>(() => work(progress, stop.Token));
        Assert.InRange(progress.Last, 0, 0.999);
    }

    private sealed class StoppingProgress(CancellationTokenSource stop) : IProgress<double>
    {
        internal double Last { get; private set; }

        public void Report(double value)
        {
            Last = Math.Max(Last, value);
            stop.Cancel();
        }
    }
}
