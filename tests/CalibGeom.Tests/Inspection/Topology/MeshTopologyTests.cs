using System.Globalization;
using System.Text;
using CalibGeom.Formats;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Inspection.Topology;

public class MeshTopologyTests
{
    public static TheoryData<CorpusCase> Cases() => [.. CorpusCase.Load("Inspection/Topology/corpus/topology.txt")];

    [Theory]
    [MemberData(nameof(Cases))]
    public void FindsWhatIsListed(CorpusCase item)
    {
        TriangleMesh mesh = MeshFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(item.Input)), item.Name).ToMesh();
        TopologyReport report = MeshTopology.Run(mesh);
        foreach (MeshDefect defect in report.Defects)
        {
            string expected = item[defect.Kind.ToString()] ?? "0";
            if (expected == "*")
                Assert.True(defect.Count > 0, $"{defect.Kind}: none");
            else
                Assert.True(expected == $"{defect.Count}", $"{defect.Kind}: {defect.Count} instead of {expected}");
            Assert.Equal(Math.Min(defect.Count, MeshDefect.MostPlaces), defect.Places.Count);
        }
        if (item["components"] is { } components)
            Assert.Equal(components, $"{report.Components.Count}");
        if (item["euler"] is { } euler)
            Assert.Equal(euler, $"{report.EulerCharacteristic}");
        if (item["genus"] is { } genus)
            Assert.Equal(genus, $"{report.Genus}");
        if (item["volume"] is { } volume)
            Assert.Equal(double.Parse(volume, CultureInfo.InvariantCulture), report.Volume, 1e-9);
        if (item["area"] is { } area)
            Assert.Equal(double.Parse(area, CultureInfo.InvariantCulture), report.Area, 1e-9);
        bool defects = report.Defects.Any(d => d.Count > 0);
        Assert.Equal(!defects, report.IsSound);
        Assert.Equal(defects, report.Findings.Any(f => f.Severity >= Severity.Warning));
    }

    /// <summary>A thousand copies of one triangle cross what the first one crosses: they are told as copies.</summary>
    [Fact]
    public void CopiesAreSearchedForCrossingsOnce()
    {
        double[] corners = [0, 0, 0, 4, 0, 0, 0, 4, 0, 1, 1, -1, 1, 1, 1, 1.5, 1, 1];
        int[] triangles = [.. Enumerable.Repeat<int[]>([0, 1, 2], 1000).SelectMany(t => t), 3, 4, 5];
        TopologyReport report = MeshTopology.Run(new TriangleMesh(corners, triangles));
        Assert.Equal(999, report[DefectKind.DuplicateTriangle].Count);
        Assert.Equal(1, report[DefectKind.Crossing].Count);
    }

    /// <summary>
    /// 1,050 upright blades along X and as many along Y cross in 1,102,500 places, of which a million count.
    /// </summary>
    [Fact]
    public void WhereCountingStoppedTheNumberIsTheLeast()
    {
        const int Blades = 1050;
        var corners = new List<double>();
        for (int i = 0; i < Blades; i++)
        {
            double at = i * 0.1;
            corners.AddRange([-1, at, 0, 200, at, 0, -1, at, 5]);
            corners.AddRange([at, -1, -1, at, 200, -1, at, -1, 4]);
        }
        TopologyReport report = MeshTopology.Run(
            new TriangleMesh(corners.ToArray(), [.. Enumerable.Range(0, 6 * Blades)])
        );
        Assert.True(report.PairsCapped);
        Assert.StartsWith(
            "At least 1000000 pairs of triangles cross or overlap",
            report.Findings.Single(f => f.Rule == "mesh-crossing").Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>Triangles round a corner in a plane, and one from there that leans through the first.</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(1000)]
    public void AFanIsSearchedForCrossings(int count)
    {
        var corners = new List<double> { 0, 0, 0 };
        for (int i = 0; i < count; i++)
            Add(i * 2 * Math.PI / count, 0);
        double middle = Math.PI / count;
        Add(middle + 0.4, 0.4);
        Add(middle - 0.4, -0.4);
        int[] triangles =
        [
            .. Enumerable.Range(0, count).SelectMany(i => new[] { 0, 1 + i, 1 + (i + 1) % count }),
            0,
            count + 1,
            count + 2,
        ];
        TopologyReport report = MeshTopology.Run(new TriangleMesh(corners.ToArray(), triangles));
        Assert.Equal((1, 0), (report[DefectKind.Crossing].Count, report[DefectKind.Contact].Count));
        Assert.Equal(
            0,
            MeshTopology.Run(new TriangleMesh(corners.ToArray(), triangles[..^3]))[DefectKind.Crossing].Count
        );

        void Add(double angle, double z) => corners.AddRange([Math.Cos(angle), Math.Sin(angle), z]);
    }

    [Fact]
    public void FindingsSayWhereAndWhatToDo()
    {
        TriangleMesh box = SampleMeshes.Box(1, 2, 3);
        Finding finding = Assert.Single(MeshTopology.Run(new(box.Coordinates, box.Triangles[3..])).Findings);
        Assert.Equal(("mesh-open-edge", Severity.Error, 3.0), (finding.Rule, finding.Severity, finding.Value));
        Assert.StartsWith("3 edges have only one triangle", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith(
            "first at x 0.5, y 1, z 0; x 1, y 1, z 0; x 0.5, y 2, z 0.",
            finding.Message,
            StringComparison.Ordinal
        );
        Assert.Equal([new(0.5, 1, 0, ""), new(1, 1, 0, ""), new(0.5, 2, 0, "")], finding.Places);
        Assert.NotEmpty(finding.Remedy);
    }

    [Fact]
    public void FindingsNameLayerAndFeatureOfEachOfTheFirstPlaces()
    {
        TriangleMesh box = SampleMeshes.Box(1, 2, 3);
        TopologyReport report = MeshTopology.Run(
            new(box.Coordinates, [.. box.Triangles[3..12], .. box.Triangles[15..]])
        );
        LayerReport layers = LayerInspection.Run(box, new() { LayerHeight = 0.1 });
        Finding finding = report.ToFindings(p => p.Z < 1 ? "low" : "high", layers.LayerAt)[0];
        Assert.Equal((6.0, "low"), (finding.Value, finding.Subject));
        Assert.Equal(6, finding.Places.Count);
        Assert.All(
            finding.Places,
            p => Assert.Equal((p.Z < 1 ? "low" : "high", (int)Math.Min(29, Math.Floor(p.Z * 10))), (p.Feature, p.Layer))
        );
        Assert.Contains(", layer 0; ", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WorkCanBeWatched()
    {
        var seen = new Watcher();
        MeshTopology.Run(SampleMeshes.Torus(9, 2, 120, 80), seen);
        Assert.Equal(seen.Order(), seen);
        Assert.InRange(seen.Count, 6, 100);
        Assert.Equal(1, seen[^1]);
    }

    private sealed class Watcher : List<double>, IProgress<double>
    {
        public void Report(double value) => Add(value);
    }

    [Fact]
    public void AnEmptyMeshIsNotSound()
    {
        TopologyReport report = MeshTopology.Run(TriangleMesh.Empty);
        Assert.False(report.IsSound || report.IsClosed);
        Assert.Null(report.Genus);
    }

    // Torus of CHECKS.md section 11: R 9, r 2; the mesh is inside the true surface, so compare with its own Pappus-like
    // polygon values.
    [Fact]
    public void ATorusInATorusIsACavityWithItsHole()
    {
        TriangleMesh mesh = TriangleMesh.Join([
            SampleMeshes.Torus(9, 2, 60, 30),
            SampleMeshes.Torus(9, 1, 60, 30).Reverse(),
        ]);
        TopologyReport report = MeshTopology.Run(mesh);
        Assert.True(report.IsSound);
        Assert.Equal((2, 0), (report.Genus, report.EulerCharacteristic));
        Assert.Equal([false, true], report.Components.Select(c => c.IsCavity));
        Assert.Equal([1, 1], report.Components.Select(c => c.Genus));
        Assert.Equal(710.611516878 * 0.75, report.Volume, 0.01 * 710);
    }

    [Property(MaxTest = 120)]
    public Property CountsDoNotDependOnPlaceDirectionOrOrder()
    {
        Gen<(int, int, int, int, int)> moves =
            from x in Gen.Choose(0, 3)
            from y in Gen.Choose(0, 3)
            from z in Gen.Choose(0, 3)
            from shift in Gen.Choose(-1_000_000, 1_000_000)
            from seed in Gen.Choose(0, int.MaxValue - 1)
            select (x, y, z, shift, seed);
        Gen<TriangleMesh> meshes = Gen.OneOf(SampleMeshes.Soups(), SampleMeshes.Bodies());
        return Prop.ForAll(
            meshes.ToArbitrary(),
            moves.ToArbitrary(),
            (mesh, move) =>
            {
                (int x, int y, int z, int shift, int seed) = move;
                TriangleMesh moved = mesh.Transform(
                    Affine3D
                        .TurnX(90 * x)
                        .Then(Affine3D.TurnY(90 * y))
                        .Then(Affine3D.TurnZ(90 * z))
                        .Then(Affine3D.Shift(new(shift / 8192.0, 3, -7)))
                );
                TopologyReport expected = MeshTopology.Run(mesh),
                    actual = MeshTopology.Run(Shuffled(moved, new Random(seed)));
                Assert.Equal(expected.Defects.Select(d => d.Count), actual.Defects.Select(d => d.Count));
                Assert.Equal(
                    (expected.Components.Count, expected.Genus, expected.EulerCharacteristic),
                    (actual.Components.Count, actual.Genus, actual.EulerCharacteristic)
                );
                Assert.Equal(expected.Area, actual.Area, 1e-9 * (1 + expected.Area));
                if (expected.IsClosed)
                    Assert.Equal(expected.Volume, actual.Volume, 1e-9 * (1 + expected.Area));
            }
        );
    }

    /// <summary>Vertices renumbered, triangles reordered, the corners of each started anywhere.</summary>
    private static TriangleMesh Shuffled(TriangleMesh mesh, Random random)
    {
        int[] place = Enumerable.Range(0, mesh.VertexCount).ToArray(),
            order = Enumerable.Range(0, mesh.TriangleCount).ToArray();
        random.Shuffle(place);
        random.Shuffle(order);
        var coordinates = new double[3 * place.Length];
        for (int v = 0; v < place.Length; v++)
            mesh.Coordinates.Slice(3 * v, 3).CopyTo(coordinates.AsSpan(3 * place[v]));
        var triangles = new int[3 * order.Length];
        for (int t = 0; t < order.Length; t++)
        {
            int turn = random.Next(3);
            for (int k = 0; k < 3; k++)
                triangles[3 * t + k] = place[mesh.Triangles[3 * order[t] + (k + turn) % 3]];
        }
        return new(coordinates, triangles);
    }
}
