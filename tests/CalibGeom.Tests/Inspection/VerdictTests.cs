using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Tests.Inspection;

/// <summary>What inspection must say of shapes whose answer follows from their measures alone.</summary>
public class VerdictTests
{
    private static readonly LayerSettings Usual = new();

    /// <summary>
    /// A slab that starts beside a wall starts in mid-air, whatever the gap: 0.05 mm is a pixel and a half.
    /// </summary>
    [Theory]
    [InlineData(0.05, 10, 10)]
    [InlineData(0.08, 10, 10)]
    [InlineData(0.1, 2, 10)]
    [InlineData(0.1, 0.5, 0.5)]
    [InlineData(0.5, 10, 10)]
    [InlineData(1.4, 1, 1)]
    public void ASlabBesideAWallIsAnIsland(double gap, double width, double depth)
    {
        TriangleMesh mesh = Shapes.Join(
            Shapes.Box(0, 0, 0, 3, 12, 6),
            Shapes.Box(3 + gap, 1, 2, 3 + gap + width, 1 + depth, 4)
        );
        MeshReport report = MeshInspection.Run(mesh, Usual);
        LayerDefect island = Assert.Single(report.Layers.Defects, d => d.Kind == LayerDefectKind.Island);
        Assert.Equal(width * depth, island.Size, 0.08 * (width + depth));
        Assert.Equal(MeshVerdict.Failing, report.Verdict);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.7)]
    [InlineData(1.4)]
    [InlineData(3)]
    public void TwoIslandsAreTwo(double apart)
    {
        TriangleMesh mesh = Shapes.Join(
            Shapes.Box(0, 0, 0, 10, 3, 1),
            Shapes.Box(1, 1, 2, 2, 2, 3),
            Shapes.Box(2 + apart, 1, 2, 3 + apart, 2, 3)
        );
        Assert.Equal(2, LayerInspection.Run(mesh, Usual).Defects.Count(d => d.Kind == LayerDefectKind.Island));
    }

    /// <summary>
    /// A shelf of 20 mm whose underside rises by an angle: below 30 degrees it fails, from 35 degrees on it is carried.
    /// </summary>
    [Theory]
    [InlineData(2, Severity.Error)]
    [InlineData(7, Severity.Error)]
    [InlineData(15, Severity.Error)]
    [InlineData(25, Severity.Error)]
    [InlineData(28, Severity.Error)]
    [InlineData(32, Severity.Warning)]
    [InlineData(38, null)]
    [InlineData(45, null)]
    [InlineData(60, null)]
    public void AShallowShelfIsJudgedByItsAngle(double degrees, Severity? expected)
    {
        const double reach = 20;
        double rise = reach * Math.Tan(degrees * Math.PI / 180);
        TriangleMesh mesh = Prism((0, 0), (5, 0), (5, 4), (5 + reach, 4 + rise), (5 + reach, 6 + rise), (0, 6 + rise));
        Finding[] found = [.. LayerInspection.Run(mesh, Usual).ToFindings().Where(f => f.Rule == "overhang")];
        Assert.Equal(expected, found.Length == 0 ? null : found.Max(f => f.Severity));
        if (expected == Severity.Error && degrees > 5)
            Assert.Equal(reach, found.Max(f => f.Value)!.Value, reach * 0.05);
    }

    /// <summary>The same, whichever way the shelf looks: rows of pixels cross its front in steps.</summary>
    [Theory]
    [InlineData(7, 5)]
    [InlineData(7, 22.5)]
    [InlineData(15, 10)]
    [InlineData(25, 75)]
    [InlineData(29, 22.5)]
    [InlineData(38, 22.5)]
    public void AShallowShelfIsJudgedAlikeWhereverItLooks(double degrees, double azimuth)
    {
        const double reach = 8;
        double rise = reach * Math.Tan(degrees * Math.PI / 180);
        TriangleMesh mesh = Prism((0, 0), (5, 0), (5, 4), (5 + reach, 4 + rise), (5 + reach, 6 + rise), (0, 6 + rise))
            .Transform(Affine3D.TurnZ(azimuth));
        Finding[] found = [.. LayerInspection.Run(mesh, Usual).ToFindings().Where(f => f.Rule == "overhang")];
        Assert.Equal(degrees < 30, found.Any(f => f.Severity == Severity.Error));
        if (degrees < 30)
            Assert.Equal(reach, found.Max(f => f.Value)!.Value, reach * 0.1);
    }

    /// <summary>
    /// A block that widens by 35 degrees from upright on all sides, its corners cut or round: each wall rises by 55
    /// degrees, the corners by 45.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(12)]
    public void ACornerThatLeansOutAslantToThePixelsIsCarried(int facets)
    {
        const double height = 7,
            radius = 0.8;
        double grow = height * Math.Tan(35 * Math.PI / 180);
        Vector2D[] Ring(double half) =>
            [
                .. from corner in Enumerable.Range(0, 4)
                from k in Enumerable.Range(0, facets + 1)
                let middle = Math.PI / 2 * corner + Math.PI / 4
                let angle = Math.PI / 2 * (corner + k / (double)facets)
                select new Vector2D(
                    Math.Sign(Math.Cos(middle)) * (half - radius) + radius * Math.Cos(angle),
                    Math.Sign(Math.Sin(middle)) * (half - radius) + radius * Math.Sin(angle)
                ),
            ];
        TriangleMesh mesh = Shapes.Prismoid(Ring(2), 0, Ring(2 + grow), height);
        foreach ((double x, double y, double layer) in new[] { (0.0494, 0.0507, 0.0258), (0.05, 0.05, 0.025) })
            Assert.Equal(
                MeshVerdict.Ready,
                MeshInspection
                    .Run(
                        mesh,
                        new LayerSettings
                        {
                            PixelX = x,
                            PixelY = y,
                            LayerHeight = layer,
                        }
                    )
                    .Verdict
            );
    }

    /// <summary>The angle alone decides nothing: what sticks out less than half a millimetre is carried.</summary>
    [Theory]
    [InlineData(0.4, null)]
    [InlineData(0.8, Severity.Warning)]
    [InlineData(3, Severity.Error)]
    public void AShallowShelfIsJudgedByItsReach(double reach, Severity? expected)
    {
        double rise = reach * Math.Tan(15 * Math.PI / 180);
        TriangleMesh mesh = Prism((0, 0), (5, 0), (5, 4), (5 + reach, 4 + rise), (5 + reach, 6 + rise), (0, 6 + rise));
        Finding[] found = [.. LayerInspection.Run(mesh, Usual).ToFindings().Where(f => f.Rule == "overhang")];
        Assert.Equal(expected, found.Length == 0 ? null : found.Max(f => f.Severity));
    }

    /// <summary>
    /// A ceiling that leans across a tunnel grows from one side until it meets the other: a short one is a bridge, a
    /// long one hangs over nothing for too long.
    /// </summary>
    [Theory]
    [InlineData(1.6, 5, "bridge", Severity.Note)]
    [InlineData(2.4, 9, "bridge", Severity.Note)]
    [InlineData(6, 7, "overhang", Severity.Error)]
    public void ALeaningCeilingIsABridgeWhenItIsShort(double width, double degrees, string rule, Severity severity)
    {
        double rise = width * Math.Tan(degrees * Math.PI / 180);
        var region = new CalibGeom.Planar.Region(
            CalibGeom.Planar.Outline.Rectangle(0, 0, 6 + width, 6),
            CalibGeom.Planar.Outline.FromMillimetres((3, 2), (3 + width, 2), (3 + width, 3 + rise), (3, 3))
        );
        TriangleMesh mesh = new CalibGeom.Solids.Solid(CalibGeom.Solids.Loft.Prism(region, 0, 8))
            .ToMesh()
            .Transform(Affine3D.TurnX(90));
        Finding[] found =
        [
            .. LayerInspection.Run(mesh, Usual).ToFindings().Where(f => f.Rule is "bridge" or "overhang"),
        ];
        Assert.Equal((rule, severity), found.Select(f => (f.Rule, f.Severity)).MaxBy(f => f.Severity));
        if (rule == "bridge")
            Assert.Equal(width, found.Max(f => f.Value)!.Value, 0.15);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(15)]
    [InlineData(30)]
    [InlineData(60)]
    public void ASharpCornerIsNoThinWall(double degrees)
    {
        double half = degrees * Math.PI / 360;
        foreach (double turn in new[] { 0.0, 0.3, 0.9 })
        {
            Vector2D[] ring =
            [
                new(0, 0),
                .. new[] { -half, half }.Select(a => new Vector2D(12 * Math.Cos(turn + a), 12 * Math.Sin(turn + a))),
            ];
            LayerReport report = LayerInspection.Run(Shapes.Prismoid(ring, 0, ring, 4), Usual);
            Assert.DoesNotContain(report.Defects, d => d.Kind == LayerDefectKind.ThinWall);
        }
    }

    /// <summary>A wall thinner than two pixels stays one, whether it ends blunt or tapers a little.</summary>
    [Theory]
    [InlineData(0.05, 0.05)]
    [InlineData(0.03, 0.06)]
    [InlineData(0.06, 0.06)]
    public void AThinWallIsTold(double thickness, double atTheOtherEnd)
    {
        Vector2D[] ring = [new(0, 0), new(6, 0), new(6, atTheOtherEnd), new(0, thickness)];
        LayerReport report = LayerInspection.Run(Shapes.Prismoid(ring, 0, ring, 0.4), Usual);
        LayerDefect wall = Assert.Single(report.Defects, d => d.Kind == LayerDefectKind.ThinWall);
        Assert.Equal(Math.Min(thickness, atTheOtherEnd), wall.Size, 0.002);
    }

    /// <summary>Sections lie at 0.025 + 0.05 k: a fin is in a layer when one of them passes through it.</summary>
    [Fact]
    public void AFinBetweenTwoLayersIsTold()
    {
        for (int step = 0; step < 20; step++)
        {
            double z = 2.0012 + step * 0.005,
                top = z + 0.031;
            bool printed = Math.Ceiling((z - 0.025) / 0.05 - 1e-9) < (top - 0.025) / 0.05;
            TriangleMesh mesh = Shapes.Join(Shapes.Box(0, 0, 0, 4, 4, 6), Shapes.Box(3.9, 1, z, 7, 3, top));
            MeshReport report = MeshInspection.Run(mesh, Usual);
            bool lost = report.Layers.Defects.Any(d => d.Kind == LayerDefectKind.BetweenLayers);
            Assert.Equal(!printed, lost);
            if (lost)
                Assert.Equal(6, report.Layers.Defects.Single(d => d.Kind == LayerDefectKind.BetweenLayers).Size, 0.4);
            Assert.NotEqual(MeshVerdict.Ready, report.Verdict);
        }
    }

    [Fact]
    public void AVoidFromTheSecondLayerIsSealedAndOneFromThePlateIsNot()
    {
        TriangleMesh outer = Shapes.Box(0, 0, 0, 6, 6, 6);
        TriangleMesh void1 = Inward(Shapes.Box(1, 1, 0.05, 5, 5, 5));
        Assert.Equal(LayerDefectKind.SealedVoid, Assert.Single(Resin(Shapes.Join(outer, void1))).Kind);
        // Open to the plate: what the plate closes opens when the part comes off it.
        TriangleMesh open = Shapes.Join(
            Shapes.Box(0, 0, 0, 1, 6, 6),
            Shapes.Box(5, 0, 0, 6, 6, 6),
            Shapes.Box(0.5, 0, 0, 5.5, 1, 6),
            Shapes.Box(0.5, 5, 0, 5.5, 6, 6),
            Shapes.Box(0.5, 0.5, 5, 5.5, 5.5, 6)
        );
        Assert.Equal(LayerDefectKind.SuctionCup, Assert.Single(Resin(open)).Kind);
    }

    [Fact]
    public void ABodyInsideAnotherIsToldAndCountedOnce()
    {
        MeshReport report = MeshInspection.Run(
            Shapes.Join(Shapes.Box(0, 0, 0, 6, 6, 6), Shapes.Box(2, 2, 2, 4, 4, 4)),
            Usual
        );
        Assert.Equal(MeshVerdict.Doubtful, report.Verdict);
        Assert.Single(report.Findings, f => f.Rule == "mesh-nested-body");
        Assert.Equal(216, report.Topology.Volume, 1e-9);
        TopologyReport hollow = MeshTopology.Run(
            Shapes.Join(Shapes.Box(0, 0, 0, 6, 6, 6), Inward(Shapes.Box(2, 2, 2, 4, 4, 4)))
        );
        Assert.Equal(208, hollow.Volume, 1e-9);
        Assert.DoesNotContain(hollow.Findings, f => f.Rule == "mesh-nested-body");
        // A body inside the hollow is apart from the material round it.
        Assert.Equal(
            209,
            MeshTopology
                .Run(
                    Shapes.Join(
                        Shapes.Box(0, 0, 0, 6, 6, 6),
                        Inward(Shapes.Box(2, 2, 2, 4, 4, 4)),
                        Shapes.Box(2.5, 2.5, 2.5, 3.5, 3.5, 3.5)
                    )
                )
                .Volume,
            1e-9
        );
    }

    /// <summary>Two cuboids in one body that meet along an edge leave four triangles there, two each way.</summary>
    [Fact]
    public void AHollowStaysAHollowWhenItsBodyTouchesItselfAlongAnEdge()
    {
        TriangleMesh body = Shapes.Join(Shapes.Box(0, 0, 0, 6, 6, 6), Shapes.Box(6, 6, 0, 8, 8, 6)).Weld();
        TopologyReport report = MeshTopology.Run(Shapes.Join(body, Inward(Shapes.Box(2, 2, 2, 4, 4, 4))));
        Assert.Equal(1, report[DefectKind.CrowdedEdge].Count);
        Assert.Equal(0, report[DefectKind.InsideOutComponent].Count);
        Assert.Single(report.Components, c => c.IsCavity);
    }

    [Fact]
    public void OverlappingBoxesHaveTheLayersOfTheBlockTheyFill()
    {
        LayerReport whole = LayerInspection.Run(Shapes.Box(0, 0, 0, 20, 10, 3), Usual);
        LayerReport parts = LayerInspection.Run(
            Shapes.Join(Shapes.Box(0, 0, 0, 10.513, 10, 3), Shapes.Box(9.502, 0, 0, 20, 10, 3)),
            Usual
        );
        Assert.Equal(
            whole.Layers.Select(l => l.Area),
            parts.Layers.Select(l => l.Area),
            (a, b) => Math.Abs(a - b) < 1e-4
        );
        Assert.Empty(parts.Defects);
    }

    [Fact]
    public void AMeshInAnotherUnitIsRefusedInPlainWords()
    {
        string said = Assert
            .Throws<InputException>(() => LayerInspection.Run(Shapes.Box(0, 0, 0, 90_000, 60_000, 5), Usual))
            .Message;
        Assert.StartsWith("The mesh is 90000 x 60000 x 5 mm, which makes ", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", said, StringComparison.Ordinal);
    }

    private static IEnumerable<LayerDefect> Resin(TriangleMesh mesh) =>
        LayerInspection
            .Run(mesh, Usual)
            .Defects.Where(d => d.Kind is LayerDefectKind.SuctionCup or LayerDefectKind.SealedVoid);

    private static TriangleMesh Inward(TriangleMesh mesh)
    {
        int[] t = mesh.Triangles.ToArray();
        for (int i = 0; i < t.Length; i += 3)
            (t[i], t[i + 1]) = (t[i + 1], t[i]);
        return new TriangleMesh(mesh.Coordinates, t);
    }

    /// <summary>A profile (x, z) drawn out by 8 mm in y; star-shaped about its mean point or cut into fans.</summary>
    private static TriangleMesh Prism(params (double X, double Z)[] profile)
    {
        var outline = CalibGeom.Planar.Outline.FromMillimetres(
            profile.Select(p => new CalibGeom.Planar.Vector2D(p.X, p.Z))
        );
        TriangleMesh flat = new CalibGeom.Solids.Solid(CalibGeom.Solids.Loft.Prism(outline, 0, 8)).ToMesh();
        // From (x, profile, depth) to (x, depth, profile) keeps outward outward when y runs backward.
        return flat.Transform(Affine3D.TurnX(90));
    }
}
