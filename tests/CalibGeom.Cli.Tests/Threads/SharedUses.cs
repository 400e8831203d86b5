using CalibGeom.Features.Files;
using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Light;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.Objects.Families;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Plates;
using CalibGeom.Slicing;
using CalibGeom.Solids;
using CalibGeom.Testing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Cli.Tests.Threads;

/// <summary>What is asked of each type that may be shared.</summary>
internal static class SharedUses
{
    private static readonly TestObjectSpec Small = Presets.Witness with { Columns = null };
    private static readonly TriangleMesh Mesh = new Solid(
        Loft.Prism(Outline.Rectangle(0, 0, 8, 6), 0, 1),
        Loft.Prism(Outline.Circle(4, 3, 2, 64), 1, 2)
    ).ToMesh();
    private static readonly PixelGrid Grid8 = PixelGrid.Covering(Mesh.Bounds, 0.1, 0.1);
    private static readonly GaussianBlur Blur = new(0.03);
    private static readonly LayerLight Light = new(new WorkingCurve(0.12, 4), 4, 2.5, 0.05);
    private static readonly Trial[] Trials = [.. Enumerable.Range(0, 5).Select(Print)];

    internal static IReadOnlyList<SharedUse> All { get; } =
    [.. Geometry(), .. Layers(), .. Plates(), .. Prints(), .. Answers()];

    private static IEnumerable<SharedUse> Geometry() =>
        [
            SharedUse.Of(
                () => Outline.Circle(1, 2, 3, 32),
                o => [o.Locate(new GridPoint(0, 0)), o.Translate(1, 1).Area]
            ),
            SharedUse.Of(
                () => new Region(Outline.Rectangle(0, 0, 9, 9), Outline.Circle(4, 4, 2, 32)),
                r => [r.Locate(new GridPoint(9, 9)), r.Translate(1, 1).Area, r.Rings.Count()]
            ),
            SharedUse.Of(() => Loft.Prism(Outline.Rectangle(0, 0, 2, 2), 0, 3), l => [l.Volume]),
            SharedUse.Of(
                () => new Solid(Loft.Prism(Outline.Circle(0, 0, 2, 32), 0, 3)),
                s => [s.ToMesh().Volume, s.ToMesh(TiltAxis.X, 3).TriangleCount]
            ),
            SharedUse.Of(
                () => new TriangleMesh(Mesh.Coordinates, Mesh.Triangles),
                m =>
                    [
                        m.Weld().VertexCount,
                        m.CrossSection(0.5).Area,
                        m.Reverse().Volume,
                        m.Transform(Affine3D.TurnX(9)).Area,
                    ]
            ),
            SharedUse.Of(() => Mesh.CrossSection(1.5), s => [s.Contours.Count]),
            SharedUse.Of(() => Mesh.CrossSection(1.5).Contours[0], c => [c.Points.Length, c.PlanePoints[^1]]),
            SharedUse.Of(
                () => new SectionFrame(new Vector3D(1, 2, 3), new Vector3D(1, 1, 1)),
                f => [f.ToPlane(new Vector3D(3, 4, 5)), f.ToSpace(new Vector2D(1, 2))]
            ),
            SharedUse.Of(
                () =>
                {
                    var stl = new MemoryStream();
                    StlWriter.Write(stl, Mesh, "shared");
                    stl.Position = 0;
                    return MeshFile.Read(stl, "shared");
                },
                f => [f.ToMesh().Volume]
            ),
        ];

    private static IEnumerable<SharedUse> Layers() =>
        [
            SharedUse.Of(() => PixelGrid.Covering(Mesh.Bounds, 0.1, 0.2), g => [g.Middle(3, 4)]),
            SharedUse.Of(() => new LayerSlicer(Mesh, 0.1), s => [s.SectionZ(3), s.Slice().Sum(l => l.Area)]),
            SharedUse.Of(
                () => new LayerSlicer(Mesh, 0.1).Slice().Last(),
                l => [l.Moved(0.1).Area, l.Points.Length, l[0].Length]
            ),
            SharedUse.Of(
                () => CoverageRaster.Of(new LayerSlicer(Mesh, 0.1).Slice().Last(), Grid8),
                r => [r.ToMask().PixelCount, r.Threshold().Area, r.Row(30).Length]
            ),
            SharedUse.Of(() => Drawn(2), m => [m[40, 30], m.Row(30).Length, m.Complement().PixelCount]),
            SharedUse.Of(
                () => new BetweenLayers(Mesh, new LayerSlicer(Mesh, 0.7), Grid8),
                b => [b.Check(0, null, Drawn(15)).Count(), b.Check(0, null, null).Sum(d => d.Size)]
            ),
            SharedUse.Of(() => new LayerSettings { LayerHeight = 0.1 }, _ => []),
            SharedUse.Of(
                () => LayerInspection.Run(Mesh, new LayerSettings { LayerHeight = 0.2 }),
                r => [r.ToFindings().Count, r.LayerAt(0.5)]
            ),
            SharedUse.Of(() => MeshInspection.Run(Mesh), r => [r.With([]).Findings.Count, r.Topology.Findings.Count]),
        ];

    private static IEnumerable<SharedUse> Plates() =>
        [
            SharedUse.Of(() => new Plate(150, 90, 160), p => [p.WithCornerOrigin()]),
            SharedUse.Of(() => new PlacementRules { Gap = 3 }, _ => []),
            SharedUse.Of(() => ShadowMap.Of(new Plate(12, 12), Mesh), m => [m.Distance(3, 4)]),
            SharedUse.Of(
                () => new PlanarTriangles([0, 0, 1, 0, 0, 1, 5, 5, 6, 5, 5, 6]),
                t => [t.Distance(9, 9, 100), t.Distance(new PlanarTriangles([9, 9, 10, 9, 9, 10]), 1, 1, 100)]
            ),
            SharedUse.Of(
                () => CouponSet.Of("shared", Small with { Title = "AT ONCE" }, 2, [2.5, 3]),
                c => [c.ExposureOf("A2"), c.All[1].Coupon.Mesh.Volume, c.OtherPresets().First().Mesh.TriangleCount]
            ),
            SharedUse.Of(
                () => new LetterShapes(0.4),
                l => [.. "0123456789012345".SelectMany(l.Of).Select(r => r.Area)]
            ),
            SharedUse.Of(() => new CouponSurface(Mesh), t => [t.Nearest([Facet()], double.PositiveInfinity)]),
            SharedUse.Of(
                () =>
                    new ObjectFamily(
                        "shared",
                        Presets.Witness,
                        [new SweepAxis("columns.height", ["5", "6"]), SweepAxis.Parse("nest.clearances=0.03,0.05")]
                    ),
                f => [SpecDigest.Of(f.Member(3).Spec), f.Label(2)]
            ),
            SharedUse.Of(() => new SharedJournal(), j => [j.Add()]) with
            {
                Type = typeof(FamilyJournal),
            },
            SharedUse.Of(typeof(UnfinishedFiles), WriteTogether),
        ];

    private static IEnumerable<SharedUse> Prints() =>
        [
            SharedUse.Of(typeof(Presets), () => Presets.All.Select(p => SpecDigest.Of(p.Spec))),
            SharedUse.Of(() => TestObject.Of(Small), o => [o.ToMesh().Volume, o.CheckAsPrinted().Count]),
            SharedUse.Of(() => new DiscMask(Blur, 0.4), d => [d.Share(0.1), d.PrintedDiameter(3)]),
            SharedUse.Of(() => StripMask.Bar(Blur, 0.4), s => [s.Share(0.1), s.Boundary(1, 3)]),
            SharedUse.Of<EdgeBlur>(() => new GaussianBlur(0.03), Spread),
            SharedUse.Of<EdgeBlur>(() => new LorentzBlur(0.03), Spread),
            SharedUse.Of(() => MaskStack.Of(Mesh, Grid8, 0.05), m => [m[3].Area, m.FilmZ(2)]),
            SharedUse.Of(
                () => new LightDose(MaskStack.Of(Mesh, Grid8, 0.05), Blur, Light),
                d => [d.At(new Vector3D(4, 3, 0.5)), d.Layers().Count()]
            ),
            SharedUse.Of(() => new PrintedObject(Made, Blur, Light), p => [.. p.Sizes(), .. p.SqueezeGaps()]),
            SharedUse.Of(
                () => new RasterPrint(Made, RasterPrint.LightOf(Made, new PerAxis(0.25, 0.25), Blur, Light)),
                p => [.. p.Sizes(), .. p.SqueezeGaps()]
            ),
            SharedUse.Of(
                () => new VirtualPrint(new PrintedObject(Made, Blur, Light), new SurvivalLaw()),
                p => [.. p.Read(7, 2, 3)]
            ),
            SharedUse.Of(
                () => new SimulatedCaliper(3),
                c => [.. c.Read(FeatureId.Parse("span.x"), FaceKind.Outside, 40, new SeededRandom(5), 3)]
            ),
            SharedUse.Of(
                () => new KnownPrint(Made.Features) { GrowthX = 0.01 },
                p => [.. p.Read(new SimulatedCaliper(3), 5, 2).Readings, p.ClearanceOf("joint1.fit", "x")]
            ),
            SharedUse.Of(
                () => new VirtualBench { Caliper = new SimulatedCaliper(3) },
                b => [.. b.Read(Made, new ExposureSettings(2.5), 5).Readings]
            ),
        ];

    private static IEnumerable<SharedUse> Answers() =>
        [
            SharedUse.Of(() => TestObject.Of(Small).Features, t => [t.Count, t.Find("box1.outside.x")]),
            new(
                typeof(ValueList<>),
                () => Presets.Standard.Nest!.Sizes,
                list => [((ValueList<double>)list).GetHashCode(), list]
            ),
            SharedUse.Of(
                () => ReadingsFile.Parse("feature,value\nbox1.outside.x,8.02\nA1/box1.outside.x,8.03\n"),
                s => [s.InstrumentOf("cal"), s.ForCoupon("A1").Readings.Count]
            ),
            SharedUse.Of(() => ExposureResponse.Of(Trials), r => [r.At(new ExposureSettings(2.4, 1))]),
            SharedUse.Of(
                () => PrintThroughResponse.Of(Trials)!,
                r => [r.At(2.4), r.IntervalAt(2.4), r.CuredLayers(2.4, 0.05)]
            ),
            SharedUse.Of(() => ColumnSurvival.Of(Trials)!, c => [c.Limit(2.4), c.Probability(0.3, 2.4)]),
            SharedUse.Of(
                () =>
                    InputSet.Of(
                        ["a", "b"],
                        [
                            [1, 1.1, 0.9],
                            [2, 2.3, 1.9],
                        ]
                    ),
                i => [i.Propagate(v => v[0] * v[1]).StandardUncertainty, i.Covariance(v => v[0], v => v[1])]
            ),
            SharedUse.Of(() => new Axis("time, s", 1, 5), a => [a.Fraction(2), a.Ticks().Count]),
        ];

    private static TestObject Made { get; } = TestObject.Of(Small);

    private static LayerMask Drawn(int layer) =>
        CoverageRaster.Of(new LayerSlicer(Mesh, 0.1).Slice().ElementAt(layer), Grid8).ToMask();

    private static IEnumerable<object?> Spread(EdgeBlur b) =>
        [b.EdgeShare(0.01), b.EdgeDistance(0.2), b.LineDensity(0.01), b.WithinRadius(0.2)];

    private static Trial Print(int i) =>
        new(new ExposureSettings(2 + 0.3 * i, 1), new TrialConditions(0.05, "Demo grey", "bench"))
        {
            GrowthX = new GrowthReading(0.01 * i, 0.004),
            Slots = new SlotOutcome([0.16, 0.2, 0.25, 0.315, 0.4], 4 - i / 2),
            Columns = [new ColumnOutcome(0.25 + 0.05 * i, i > 2 ? ColumnStage.Cure : ColumnStage.Lost)],
        };

    private static StlFacet Facet() => StlFacet.Of(9, 9, 9, 10, 9, 9, 9, 10, 9);

    /// <summary>Sets of outputs that are written, moved and dropped, each noted among the unfinished files.</summary>
    private static IEnumerable<object?> WriteTogether()
    {
        using var folder = new TemporaryFolder();
        for (int i = 0; i < 5; i++)
        {
            using var files = new OutputSet();
            files.Add(folder[$"{i}"], s => s.WriteByte(1));
            if (i % 2 == 0)
                files.Commit();
        }
        return Directory.GetFiles(folder.Root).Select(f => Path.GetFileName(f)).Order().ToArray();
    }
}
