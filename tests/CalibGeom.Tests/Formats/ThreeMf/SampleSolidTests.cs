using CalibGeom.Formats;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Formats.ThreeMf;

public class SampleSolidTests
{
    private static readonly Dictionary<string, TriangleMesh> Solids = new()
    {
        ["box"] = SampleMeshes.Box(10, 20, 30),
        ["cylinder"] = SampleSolids.Cylinder(),
        ["sphere"] = SampleSolids.Sphere(),
        ["torus"] = SampleSolids.Torus(),
    };

    /// <summary>
    /// The table of CHECKS.md 10.3 (computed there from the 3MF sample files at 665e20dc). Counts must be equal.
    /// Volumes and areas of the tessellations made anew agree to a few millionths, because the files' coordinates are
    /// rounded; the tolerance says how far.
    /// </summary>
    [Theory]
    [InlineData("box", 8, 12, 18, 2, 0, 6000, 2200, 1e-12)]
    [InlineData("cylinder", 46, 88, 132, 2, 0, 6198.101851213, 1872.179307211, 3e-6)]
    [InlineData("sphere", 1442, 2880, 4320, 2, 0, 4172.802690004, 1253.982321448, 2e-7)]
    [InlineData("torus", 1100, 2200, 3300, 0, 1, 776.830794973, 785.594697583, 3e-6)]
    public void CountsVolumeAndAreaAreThoseOfTheSampleFiles(
        string name,
        int vertices,
        int triangles,
        int edges,
        int euler,
        int genus,
        double volume,
        double area,
        double relative
    )
    {
        using var package = new MemoryStream();
        ThreeMfWriter.Write(package, [new(name, Solids[name])], new() { Title = name });
        package.Position = 0;
        TopologyReport report = MeshTopology.Run(MeshFile.Read(package, name).ToMesh());
        Assert.True(report.IsSound);
        Assert.Equal(
            (vertices, triangles, edges, euler, genus),
            (report.VertexCount, report.TriangleCount, report.EdgeCount, report.EulerCharacteristic, report.Genus)
        );
        Assert.Equal(volume, report.Volume, volume * relative);
        Assert.Equal(area, report.Area, area * relative);
    }
}
