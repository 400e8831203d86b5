using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

public class EdgeCaseObjectTests
{
    [Theory]
    [InlineData("witness", 3, 2.8)]
    [InlineData("witness", 10, 4.9)]
    [InlineData("standard", 2.5, 2.49)]
    [InlineData("limit", 4, 1.9)]
    public void APadKeepsOffTheCornersOfADeepChamfer(string preset, double thickness, double chamfer)
    {
        TestObject made = TestObject.Of(
            Presets.Find(preset)!.Spec with
            {
                Plinth = new PlinthSpec { Thickness = thickness, EdgeChamfer = chamfer },
            }
        );
        Assert.False(made.HasErrors);
        Assert.Equal(2 - 2 * made.TunnelCount, made.ToMesh().EulerCharacteristic);
    }

    [Fact]
    public void AnInnermostBoxTooSmallForJawsIsSolidAndNotRefused()
    {
        TestObject made = TestObject.Of(new TestObjectSpec { Nest = new NestSpec { Sizes = [5.6, 8.0, 11.2] } });
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        Assert.Contains(made.Findings, f => f is { Rule: "box-without-pocket", Subject: "box1", Value: 3.2 or > 3.19 });
        Assert.Null(made.Features.Find("box1.inside.x"));
        Assert.NotNull(made.Features.Find("box1.outside.x"));
        Assert.NotNull(made.Features.Find("box2.inside.x"));
        BoxPlan box = made.Boxes[0];
        Assert.False(box.HasPocket);
        SectionContour[] inside =
        [
            .. made.ToMesh()
                .CrossSection((box.BandBottom + box.BandTop) / 2)
                .Contours.Where(c =>
                    c.PlanePoints.ToArray().All(p => Math.Abs(p.X - box.X) < 3 && Math.Abs(p.Y - box.Y) < 3)
                ),
        ];
        Assert.True(Assert.Single(inside).SignedArea > 0);
        // One more tenth of a millimetre, and a pocket of 3.4 mm is there.
        Assert.True(
            TestObject.Of(new TestObjectSpec { Nest = new NestSpec { Sizes = [5.8, 8.2, 11.4] } }).Boxes[0].HasPocket
        );
    }

    /// <summary>
    /// The well of the innermost box takes no other box's foot: its vents alone refuse nothing, and what is said of it
    /// speaks of no smaller box.
    /// </summary>
    [Theory]
    [InlineData(5.0, 8.0, 0.8, "Beside a pocket's vents a wall of 0.35 mm would be left (it needs 0.5 mm)")]
    [InlineData(8.0, 11.2, 3.0, "A pocket of 2 mm takes no caliper's inside jaws (they need 3.4 mm)")]
    [InlineData(8.0, 11.2, 10.0, "Walls of 10 mm leave no pocket")]
    public void AnInnermostBoxThatNobodyNeedsAPocketOfIsSolid(double inner, double outer, double wall, string why)
    {
        TestObject made = TestObject.Of(
            new TestObjectSpec
            {
                Nest = new NestSpec
                {
                    Sizes = [inner, outer],
                    Clearances = [0.05],
                    Wall = wall,
                },
            }
        );
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        Assert.DoesNotContain(
            made.Findings,
            f => f.Subject.StartsWith("box1", StringComparison.Ordinal) && f.Rule != "box-without-pocket"
        );
        Finding note = Assert.Single(made.Findings, f => f.Rule == "box-without-pocket");
        Assert.Equal(why + ", so the innermost box is solid.", note.Message);
        Assert.Equal(2 - 2 * made.TunnelCount, made.ToMesh().EulerCharacteristic);
    }

    [Fact]
    public void WitnessColumnsStandTwoByTwo() =>
        Assert.Equal(
            [(1, 1), (1, 2), (2, 1), (2, 2)],
            TestObject.Of(Presets.Witness).Columns.Select(c => (c.Row, c.Place)).Order()
        );

    [Fact]
    public void TheSearchObjectIsLow()
    {
        double search = Height("search"),
            standard = Height("standard");
        Assert.InRange(search, 8, 10);
        Assert.InRange(search / standard, 0.4, 0.65);
    }

    [Fact]
    public void PinsAndHolesHaveTheirDiametersAndEveryHoleOpensToTheBack()
    {
        var spec = new TestObjectSpec { Pins = new(), Walls = new() };
        TestObject made = TestObject.Of(spec);
        Assert.DoesNotContain(made.Findings, f => f.Severity == Severity.Error);
        TriangleMesh mesh = made.ToMesh();
        Assert.Equal(1, mesh.ComponentCount);
        Assert.Equal(2 - 2 * made.TunnelCount, mesh.EulerCharacteristic);
        Assert.Empty(CalibGeom.TestObjects.Comparison.SpecComparison.Check(mesh, made));
        Assert.Equal(
            [1, 1.6, 2.5, 4],
            Enumerable.Range(1, 4).Select(i => made.Features.Find($"hole{i}.diameter")!.Nominal)
        );
        Assert.Equal(0.1, made.Features.Find("wall1.thickness")!.Nominal);
        Assert.Equal(8, made.Features.Find("walls.standing")!.Nominal);
        // A line to the back, half way up the vents (0.8 to 2 mm above the plinth), meets nothing.
        GaugeLine hole = made.Gauges.First(g => g.Feature == "hole1.diameter");
        Vector3D middle = (hole.From.Point + hole.To.Point) * 0.5;
        double z = made.Plan.PlinthTop + 1.4;
        Assert.Equal(0, mesh.CrossSection(z).Contours.Sum(c => Winding(c, middle.X, middle.Y)));
        Assert.Equal(0, mesh.CrossSection(z).Contours.Sum(c => Winding(c, middle.X, middle.Y + 1.6)));
    }

    private static double Height(string preset) => TestObject.Of(Presets.Find(preset)!.Spec).ToMesh().Bounds.Size.Z;

    /// <summary>How often a contour goes round a point, counter-clockwise.</summary>
    private static int Winding(SectionContour contour, double x, double y)
    {
        Vector2D[] ring = contour.PlanePoints.ToArray();
        int winding = 0;
        for (int i = 0; i < ring.Length; i++)
        {
            Vector2D a = ring[i],
                b = ring[(i + 1) % ring.Length];
            double side = (b.X - a.X) * (y - a.Y) - (x - a.X) * (b.Y - a.Y);
            if (a.Y <= y && b.Y > y && side > 0)
                winding++;
            else if (a.Y > y && b.Y <= y && side < 0)
                winding--;
        }
        return winding;
    }
}
