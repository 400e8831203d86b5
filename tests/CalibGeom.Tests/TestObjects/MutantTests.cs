using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Signs, directions and defaults that a small slip would turn.</summary>
public class MutantTests
{
    // Right-hand rule about Y: +Z turns towards +X, +X towards -Z.
    [Fact]
    public void TheFrameOfOverhangsTurnsAboutYLikeTheMesh()
    {
        var frame = new PrintFrame(new TiltSpec { Axis = TiltAxis.Y, Angle = 30 });
        Vector3D x = frame.Turn(new Vector3D(1, 0, 0)),
            z = frame.Turn(new Vector3D(0, 0, 1));
        Assert.Equal((Math.Sqrt(0.75), -0.5), (x.X, x.Z), TwoNumbers);
        Assert.Equal((0.5, Math.Sqrt(0.75)), (z.X, z.Z), TwoNumbers);
    }

    // Columns that lean 20 degrees towards +X: turned the same way by 18 degrees they lie at 52 degrees from
    // horizontal,
    // turned back they stand at 88.
    [Theory]
    [InlineData(18, 52)]
    [InlineData(-18, 88)]
    public void ATiltAboutYAddsToALeanTowardsX(double tilt, double steepness)
    {
        TestObject made = TestObject.Of(
            new TestObjectSpec
            {
                Nest = null,
                Spans = null,
                Slots = null,
                Columns = new ColumnsSpec
                {
                    Diameters = [1.0],
                    Copies = 1,
                    HeadDiameter = 0.2,
                    Lean = 20,
                    Azimuth = 0,
                },
                Tilt = new TiltSpec { Axis = TiltAxis.Y, Angle = tilt },
            }
        );
        Loft shaft = made.Plan.Bodies.Single(b => b.Subject == "column1").Lofts[1];
        Assert.Equal(steepness, OverhangRule.Flattest([shaft], new PrintFrame(made.Spec.Tilt)), 0.5);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    [InlineData(215)]
    public void GaugesOfALeaningColumnLieSquareToItsAxisHalfWayUp(double azimuth)
    {
        var columns = new ColumnsSpec
        {
            Diameters = [0.8],
            Copies = 1,
            Lean = 25,
            Azimuth = azimuth,
        };
        TestObject made = TestObject.Of(new TestObjectSpec { Columns = columns });
        (double sin, double cos) = Math.SinCos(azimuth * Math.PI / 180);
        double slope = Math.Tan(25 * Math.PI / 180);
        var axis = new Vector3D(slope * cos, slope * sin, 1);
        ColumnPlan column = made.Columns[0];
        Vector3D middle = new Vector3D(column.X, column.Y, made.Plan.PlinthTop) + axis * (columns.Height / 2);
        GaugeLine[] lines = [.. made.Gauges.Where(g => g.Feature == "column1.diameter")];
        Assert.Equal(8, lines.Length);
        Assert.All(
            lines,
            l =>
            {
                Assert.Equal(0, Vector3D.Dot(l.Direction, axis), 1e-9);
                Assert.Equal(0, ((l.From.Point + l.To.Point) * 0.5 - middle).Length, 1e-3);
                Assert.Equal(0.8, l.Length(), 1e-9);
            }
        );
    }

    [Fact]
    public void ClearancesOfAnotherNumberOfBoxesKeepTheirValueAndAreNotReplaced()
    {
        TestObjectSpec coarse = Presets.Coarse;
        Assert.Equal([0.1], SpecJson.With(coarse, ["nest.sizes=10,14"]).Nest!.Clearances.Select(c => c.X));
        Assert.Equal(
            [0.1, 0.1, 0.1],
            SpecJson.With(coarse, ["nest.sizes=10,14,20,28"]).Nest!.Clearances.Select(c => c.X)
        );
        TestObjectSpec graded = SpecJson.With(coarse, ["nest.clearances=0.1,0.2"]);
        InputException refused = Assert.Throws<InputException>(() => SpecJson.With(graded, ["nest.sizes=10,14"]));
        Assert.Contains("nest.clearances", refused.Message, StringComparison.Ordinal);
        Assert.Throws<InputException>(() => SpecJson.With(coarse, ["nest.sizes=10,14", "nest.clearances=0.1,0.1"]));
    }

    private static bool TwoNumbers((double, double) a, (double, double) b) =>
        Math.Abs(a.Item1 - b.Item1) < 1e-12 && Math.Abs(a.Item2 - b.Item2) < 1e-12;
}
