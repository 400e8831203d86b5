using System.Globalization;
using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Plates;

namespace CalibGeom.Tests.Inspection;

public class LayerInspectionTests
{
    private static readonly LayerSettings Coarse = new()
    {
        LayerHeight = 0.1,
        PixelX = 0.05,
        PixelY = 0.05,
    };

    [Fact]
    public void ABoxHasNothingToReport()
    {
        LayerReport report = LayerInspection.Run(Shapes.Box(0, 0, 0, 4, 3, 2), Coarse);
        Assert.Empty(report.Defects);
        Assert.Equal(20, report.Layers.Count);
        Assert.All(
            report.Layers,
            l => Assert.Equal((12.0, new Vector2D(0, 0), new Vector2D(4, 3)), (Math.Round(l.Area, 9), l.Min, l.Max))
        );
        Assert.Equal(
            (0.0, 0, 1.0),
            (report.LargestStep, report.LargestStepLayer, Math.Round(report.RelativePeelForce, 9))
        );
    }

    [Fact]
    public void EveryHeightHasItsLayer()
    {
        LayerReport report = LayerInspection.Run(Shapes.Box(0, 0, 5, 4, 3, 7), Coarse);
        Assert.Equal([0, 0, 0, 1, 9, 19, 19], new[] { 4.0, 5, 5.09, 5.11, 5.95, 7, 9 }.Select(z => report.LayerAt(z)));
        Assert.Null(LayerInspection.Run(TriangleMesh.Empty).LayerAt(0));
    }

    [Fact]
    public void FindingsHoldTheirPlace()
    {
        TriangleMesh cup = Shapes.Revolve(60, (0, 0), (4, 0), (4, 5), (3, 5), (3, 1), (0, 1));
        FindingPlace place = Assert.Single(
            Assert.Single(LayerInspection.Run(cup, Coarse).ToFindings(_ => "box1")).Places
        );
        Assert.Equal(("box1", 10, 49), (place.Feature, place.Layer, place.LastLayer));
    }

    // A block of 30 x 20 x 5 mm on plates of width x depth x height.
    [Theory]
    [InlineData(30, 20, 5, "")]
    [InlineData(29, 40, 5, "x 30>29 turn")]
    [InlineData(20, 30, 5, "x 30>20 turn")]
    [InlineData(29, 29, 5, "x 30>29")]
    [InlineData(40, 19, 4, "y 20>19; z 5>4")]
    [InlineData(10, 10, 9, "x 30>10; y 20>10")]
    public void EveryDirectionInWhichAMeshIsLargerThanThePlateIsFound(
        double width,
        double depth,
        double height,
        string expected
    )
    {
        LayerSettings settings = Coarse with { Plate = new Plate(width, depth, height) };
        Finding[] findings = [.. LayerInspection.Run(Shapes.Box(100, 7, -3, 130, 27, 2), settings).ToFindings()];
        Assert.All(
            findings,
            f => Assert.Equal(("larger-than-plate", Severity.Error, "mm"), (f.Rule, f.Severity, f.Unit))
        );
        Assert.Equal(
            expected,
            string.Join(
                "; ",
                findings.Select(f =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{f.Message[f.Message.IndexOf('(', StringComparison.Ordinal) + 1]} "
                            + $"{f.Value}>{f.Limit}{(f.Remedy.Contains("90 degrees", StringComparison.Ordinal) ? " turn" : "")}"
                    )
                )
            )
        );
    }

    [Fact]
    public void APlateCountsWithoutItsMarginAndAnEmptyMeshHasRoomOnAny()
    {
        LayerSettings settings = Coarse with { Plate = new Plate(34, 40, null, margin: 2.5) };
        Assert.Equal(
            29,
            Assert.Single(LayerInspection.Run(Shapes.Box(0, 0, 0, 30, 20, 2), settings).ToFindings()).Limit
        );
        Assert.DoesNotContain(
            LayerInspection.Run(TriangleMesh.Empty, settings).ToFindings(),
            f => f.Rule == "larger-than-plate"
        );
    }

    [Fact]
    public void AnEmptyMeshHasNoLayers()
    {
        LayerReport report = LayerInspection.Run(TriangleMesh.Empty);
        Assert.Empty(report.Layers);
        Assert.Empty(report.Defects);
        Assert.Null(report.Largest);
        Assert.Equal(0, report.RelativePeelForce);
    }

    [Fact]
    public void ACupThatFacesTheFilmTrapsItsContent()
    {
        // Radius 3 from z = 1 to 5, closed by the film in every layer.
        const int n = 60;
        TriangleMesh cup = Shapes.Revolve(n, (0, 0), (4, 0), (4, 5), (3, 5), (3, 1), (0, 1));
        LayerDefect defect = Assert.Single(LayerInspection.Run(cup, Coarse).Defects);
        Assert.Equal((LayerDefectKind.SuctionCup, 10, 49), (defect.Kind, defect.Layer, defect.LastLayer));
        Assert.Equal(Shapes.PolygonPi(n) * 9 * 4, defect.Size, 0.5);
    }

    /// <summary>As in the letters of a title: each is too small to be told alone.</summary>
    [Fact]
    public void SmallCupsAreOneNote()
    {
        TriangleMesh[] cups =
        [
            .. Enumerable
                .Range(1, 12)
                .Select(i =>
                {
                    double r = 0.3 + 0.02 * i;
                    TriangleMesh cup = Shapes.Revolve(60, (0, 0), (1, 0), (1, 2), (r, 2), (r, 1), (0, 1));
                    return cup.Transform(Affine3D.Shift(new Vector3D(3 * i, 0, 0)));
                }),
        ];
        Finding note = Assert.Single(
            LayerInspection.Run(Shapes.Join(cups), Coarse).ToFindings(),
            f => f.Rule == "suction-cup"
        );
        Assert.Equal(Severity.Note, note.Severity);
        Assert.StartsWith("12 small pockets hold resin while they print, ", note.Message, StringComparison.Ordinal);
        Assert.Contains("; the largest, 0.9", note.Message, StringComparison.Ordinal);
        Assert.Equal(Math.PI * 0.54 * 0.54, note.Value!.Value, 0.06);
        Assert.Equal(36, note.Places[0].X, 0.6);
    }

    [Fact]
    public void ACupThatFacesThePlateTrapsItsContentUntilItsCeilingCloses()
    {
        TriangleMesh cup = Shapes.Revolve(60, (3, 0), (4, 0), (4, 5), (0, 5), (0, 4), (3, 4));
        LayerReport report = LayerInspection.Run(cup, Coarse);
        LayerDefect trapped = Assert.Single(report.Defects, d => d.Kind == LayerDefectKind.SuctionCup);
        Assert.Equal((0, 39), (trapped.Layer, trapped.LastLayer));
        LayerDefect ceiling = Assert.Single(report.Defects, d => d.Kind == LayerDefectKind.Bridge);
        Assert.Equal(40, ceiling.Layer);
        Assert.Equal(6, ceiling.Size, 0.11);
        Assert.Equal(2, report.Defects.Count);
    }

    [Fact]
    public void AVentAtTheFloorOfACupLetsItDrainAndAVentAboveItOnlyLater()
    {
        Assert.DoesNotContain(
            LayerInspection.Run(SquareCup(1), Coarse).Defects,
            d => d.Kind == LayerDefectKind.SuctionCup
        );
        LayerDefect late = Assert.Single(
            LayerInspection.Run(SquareCup(2), Coarse).Defects,
            d => d.Kind == LayerDefectKind.SuctionCup
        );
        Assert.Equal((10, 19), (late.Layer, late.LastLayer));
        Assert.Equal(16, late.Size, 1e-6);
    }

    [Fact]
    public void ASealedVoidIsFoundWithItsVolume()
    {
        TriangleMesh hollow = Shapes.Join(Shapes.Box(0, 0, 0, 5, 5, 5), Shapes.InsideOut(Shapes.Box(1, 1, 1, 4, 3, 2)));
        LayerReport report = LayerInspection.Run(hollow, Coarse);
        LayerDefect sealedVoid = Assert.Single(report.Defects, d => d.Kind == LayerDefectKind.SealedVoid);
        Assert.Equal((10, 19), (sealedVoid.Layer, sealedVoid.LastLayer));
        Assert.Equal(6, sealedVoid.Size, 1e-6);
        Assert.DoesNotContain(report.Defects, d => d.Kind == LayerDefectKind.SuctionCup);
    }

    [Fact]
    public void AMushroomsHatHangsOverAndItsRimIsAnIslandWhenItPointsDown()
    {
        TriangleMesh mushroom = Shapes.Revolve(48, (0, 0), (1, 0), (1, 3), (2.5, 3), (2.5, 2), (3, 2), (3, 4), (0, 4));
        LayerReport report = LayerInspection.Run(mushroom, Coarse);
        LayerDefect rim = Assert.Single(report.Defects, d => d.Kind == LayerDefectKind.Island);
        Assert.Equal(20, rim.Layer);
        Assert.Equal(Shapes.PolygonPi(48) * (9 - 6.25), rim.Size, 0.15);

        LayerReport plain = LayerInspection.Run(
            Shapes.Revolve(48, (0, 0), (1, 0), (1, 3), (3, 3), (3, 4), (0, 4)),
            Coarse
        );
        LayerDefect overhang = Assert.Single(plain.Defects);
        Assert.Equal((LayerDefectKind.Overhang, 30, 30), (overhang.Kind, overhang.Layer, overhang.LastLayer));
        Assert.Equal(2, overhang.Size, 0.06);
        Assert.Equal(Shapes.PolygonPi(48) * 8, plain.LargestStep, 1e-9);
        Assert.Equal(30, plain.LargestStepLayer);
        Assert.Equal(9 / ((1 * 30 + 9 * 10) / 40.0), plain.RelativePeelForce, 1e-9);
    }

    [Theory]
    [InlineData(0.45, 0)]
    [InlineData(0.6, 1)]
    public void AShelfIsReportedOnlyBeyondWhatALayerCarries(double shelf, int found)
    {
        TriangleMesh step = Shapes.Join(Shapes.Box(0, 0, 0, 2, 2, 1), Shapes.Box(0, 0, 0.5, 2 + shelf, 2, 1));
        Assert.Equal(found, LayerInspection.Run(step, Coarse).Defects.Count);
    }

    [Fact]
    public void ALeanOf45DegreesCarriesItself()
    {
        Vector2D[] square = [new(0, 0), new(1, 0), new(1, 1), new(0, 1)];
        TriangleMesh lean = Shapes.Prismoid(square, 0, Array.ConvertAll(square, p => p + new Vector2D(5, 0)), 5);
        Assert.Empty(LayerInspection.Run(lean, Coarse).Defects);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    [InlineData(18.4)]
    [InlineData(30)]
    [InlineData(40)]
    [InlineData(52)]
    [InlineData(78)]
    public void ATurnedBridgeKeepsItsSpanAndSticksOutNowhere(double degrees)
    {
        var gate = Shapes.Join(
            Shapes.Box(0, 0, 0, 2, 4, 1),
            Shapes.Box(6, 0, 0, 8, 4, 1),
            Shapes.Box(0, 0, 1, 8, 4, 2)
        );
        var settings = new LayerSettings { PixelX = 0.035, PixelY = 0.035 };
        IReadOnlyList<LayerDefect> found = LayerInspection
            .Run(gate.Transform(Affine3D.TurnZ(degrees)), settings)
            .Defects;
        LayerDefect bridge = Assert.Single(found, d => d.Kind == LayerDefectKind.Bridge);
        Assert.Equal(4, bridge.Size, 0.07);
        Assert.DoesNotContain(found, d => d.Kind == LayerDefectKind.Overhang);
    }

    [Fact]
    public void WhatNoLayerHoldsIsAnError()
    {
        foreach (TriangleMesh mesh in new[] { TriangleMesh.Empty, Shapes.Box(0, 0, 0, 5, 5, 0.024) })
            Assert.Contains(
                LayerInspection.Run(mesh).ToFindings(),
                f => f is { Rule: "nothing-prints", Severity: Severity.Error }
            );
        Assert.DoesNotContain(
            LayerInspection.Run(Shapes.Box(0, 0, 0, 5, 5, 0.026)).ToFindings(),
            f => f.Rule == "nothing-prints"
        );
    }

    [Fact]
    public void ABridgeIsCarriedOnBothSidesAndItsSpanMeasured()
    {
        TriangleMesh gate = Shapes.Join(
            Shapes.Box(0, 0, 0, 1, 2, 3),
            Shapes.Box(3.5, 0, 0, 4.5, 2, 3),
            Shapes.Box(0, 0, 2, 4.5, 2, 3)
        );
        LayerDefect bridge = Assert.Single(LayerInspection.Run(gate, Coarse).Defects);
        Assert.Equal((LayerDefectKind.Bridge, 20, 20), (bridge.Kind, bridge.Layer, bridge.LastLayer));
        Assert.Equal(2.5, bridge.Size, 0.051);
        Assert.Equal(2.25, bridge.Place.X, 0.06);
    }

    [Theory]
    [InlineData(0.06, LayerDefectKind.ThinWall)]
    [InlineData(0.099, LayerDefectKind.ThinWall)]
    [InlineData(0.1, null)]
    [InlineData(0.11, null)]
    public void AWallUnderTwoPixelsIsFoundWhereverThePixelsFall(double width, LayerDefectKind? kind)
    {
        foreach (double phase in new[] { 0, 0.01, 0.025, 0.04 })
        {
            LayerReport report = LayerInspection.Run(Shapes.Box(phase, 0, 0, phase + width, 5, 3), Coarse);
            Assert.Equal(kind is null ? [] : [kind.Value], report.Defects.Select(d => d.Kind));
            Assert.All(report.Defects, d => Assert.Equal(width, d.Size, 1e-9));
        }
    }

    [Theory]
    [InlineData(0.07, true)]
    [InlineData(0.12, false)]
    public void AGapUnderTwoPixelsIsFound(double width, bool found)
    {
        TriangleMesh comb = Shapes.Join(Shapes.Box(0, 0, 0, 2, 5, 3), Shapes.Box(2 + width, 0, 0, 4, 5, 3));
        LayerReport report = LayerInspection.Run(comb, Coarse);
        Assert.Equal(found ? [LayerDefectKind.ThinGap] : [], report.Defects.Select(d => d.Kind));
        Assert.All(report.Defects, d => Assert.Equal((width, 0, 29), (Math.Round(d.Size, 9), d.Layer, d.LastLayer)));
    }

    [Fact]
    public void AThinWallAtAnAngleIsMeasuredSquareToItself()
    {
        foreach (double angle in new[] { 10.0, 45, 60, 80 })
        {
            double c = Math.Cos(angle * Math.PI / 180),
                s = Math.Sin(angle * Math.PI / 180);
            Vector2D Turn(double x, double y) => new(x * c - y * s, x * s + y * c);
            Vector2D[] ring = [Turn(0, 0), Turn(4, 0), Turn(4, 0.08), Turn(0, 0.08)];
            LayerDefect wall = Assert.Single(
                LayerInspection.Run(Shapes.Prismoid(ring, 0, ring, 2), Coarse).Defects,
                d => d.Kind == LayerDefectKind.ThinWall
            );
            Assert.Equal(0.08, wall.Size, 1e-9);
        }
    }

    [Fact]
    public void AThinColumnIsFound()
    {
        LayerReport report = LayerInspection.Run(Shapes.Revolve(24, (0, 0), (0.045, 0), (0.045, 3), (0, 3)), Coarse);
        Assert.Equal(LayerDefectKind.ThinWall, Assert.Single(report.Defects).Kind);
    }

    [Fact]
    public void ARimACornerAndATipAreNotThinWalls()
    {
        TriangleMesh rim = Shapes.Revolve(60, (3, 0), (4, 0), (4, 3), (3.99, 3), (3.5, 2.5), (3, 2.5));
        TriangleMesh cone = Shapes.Revolve(60, (0, 0), (2, 0), (0, 2));
        Vector2D[] wedge = [new(0, 0), new(3, -0.6), new(3, 0.6)];
        foreach (TriangleMesh mesh in new[] { rim, cone, Shapes.Prismoid(wedge, 0, wedge, 2) })
            Assert.DoesNotContain(
                LayerInspection.Run(mesh, Coarse).Defects,
                d => d.Kind is LayerDefectKind.ThinWall or LayerDefectKind.ThinGap
            );
    }

    [Fact]
    public void OverlappingShellsHaveNoGapsOrWallsInside()
    {
        TriangleMesh two = Shapes.Join(
            Shapes.Box(0, 0, 0, 2, 2, 2),
            Shapes.Box(1.95, 0, 0, 4, 2, 2),
            Shapes.Box(4, 0, 0, 6, 2, 2)
        );
        LayerReport report = LayerInspection.Run(two, Coarse);
        Assert.Empty(report.Defects);
        Assert.Equal(12, report.Layers[5].Area, 1e-6);
    }

    [Fact]
    public void WorkCanBeWatchedAndStopped()
    {
        var seen = new List<double>();
        LayerInspection.Run(Shapes.Box(0, 0, 0, 1, 1, 1), Coarse, new Recorder(seen));
        Assert.Equal(10, seen.Count);
        Assert.Equal(1, seen[^1]);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            LayerInspection.Run(Shapes.Box(0, 0, 0, 1, 1, 1), Coarse, null, stop.Token)
        );
    }

    [Fact]
    public void SettingsAreChecked()
    {
        Assert.Throws<ArgumentException>(() => new LayerSettings { LayerHeight = 0 });
        Assert.Throws<ArgumentException>(() => new LayerSettings { PixelX = double.NaN });
        Assert.Throws<ArgumentException>(() => new LayerSettings { PixelY = 11 });
        Assert.Throws<ArgumentException>(() => new LayerSettings { MinimumPixels = -1 });
        Assert.Throws<ArgumentException>(() => new LayerSettings { CarriedOverhang = -1 });
        Assert.Throws<ArgumentException>(() => new LayerSettings { FailingOverhang = -1 });
        Assert.Throws<ArgumentException>(() => new LayerSettings { CarriedBridge = -1 });
        Assert.Throws<ArgumentException>(() => new LayerSettings { SmallCavity = -1 });
    }

    /// <summary>
    /// A box with a 4 x 4 pocket from z = 1 to 5 and a slit through one wall from the given height upward, as
    /// overlapping boxes.
    /// </summary>
    private static TriangleMesh SquareCup(double vent) =>
        Shapes.Join(
            Shapes.Box(0, 0, 0, 6, 6, 1),
            Shapes.Box(0, 0, 0.5, 1, 6, 5),
            Shapes.Box(5, 0, 0.5, 6, 6, 5),
            Shapes.Box(0.5, 5, 0.5, 5.5, 6, 5),
            Shapes.Box(0.5, 0, 0.5, 5.5, 1, vent),
            Shapes.Box(0.5, 0, 0.6, 2, 1, 5),
            Shapes.Box(3, 0, 0.6, 5.5, 1, 5)
        );

    private sealed class Recorder(List<double> seen) : IProgress<double>
    {
        public void Report(double value) => seen.Add(value);
    }
}
