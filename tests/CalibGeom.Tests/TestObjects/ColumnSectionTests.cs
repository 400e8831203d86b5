using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

public class ColumnSectionTests
{
    [Theory]
    [InlineData(0, 90)]
    [InlineData(15, 90)]
    [InlineData(30, 33)]
    [InlineData(45, -120)]
    public void TheSectionSquareToTheAxisIsACircleOfTheNominalDiameter(double lean, double azimuth)
    {
        var columns = new ColumnsSpec { Lean = lean, Azimuth = azimuth };
        PrintedObject printed = PrintedObject.Of(
            new TestObjectSpec
            {
                Columns = columns,
                Nest = null,
                Slots = null,
                Spans = null,
                Labels = null,
            }
        );
        (double sin, double cos) = Math.SinCos(lean * Math.PI / 180);
        (double y, double x) = Math.SinCos(azimuth * Math.PI / 180);
        var axis = new Vector3D(sin * x, sin * y, cos);
        double plinth = printed.Made.Spec.Plinth.Thickness,
            half = columns.Height / 2;
        Assert.Equal(22, printed.Made.Columns.Count);
        foreach (ColumnPlan column in printed.Made.Columns)
        {
            var middle = new Vector3D(column.X, column.Y, plinth) + axis * (half / cos);
            Vector3D[] ring = Nearest(printed, middle, axis, out double area);
            Assert.Equal(column.Diameter, 2 * Math.Sqrt(area / Math.PI), PrintedObject.Unit);
            // Round, not only of equal area: every corner is as far from the axis as the chord tolerance allows.
            double[] radii = [.. ring.Select(p => (p - middle).Length)];
            Assert.InRange(radii.Max() - radii.Min(), 0, 0.002 + 2 * PrintedObject.Unit);
        }
    }

    [Fact]
    public void NumbersFollowTheListAndPlacesDoNot()
    {
        TestObject made = TestObject.Of(new TestObjectSpec());
        Assert.Equal(
            made.Spec.Columns!.Diameters.SelectMany(d => new[] { d, d }),
            made.Columns.Select(c => c.Diameter)
        );
        Assert.Equal(22, made.Columns.Select(c => (c.X, c.Y)).Distinct().Count());
        // Correlation of diameter with either coordinate stays small, so that a slope over the plate is not read as a
        // slope over diameter.
        Assert.InRange(Math.Abs(Correlation(made.Columns, c => c.X)), 0, 0.35);
        Assert.InRange(Math.Abs(Correlation(made.Columns, c => c.Y)), 0, 0.35);
        Assert.Equal(1.6 * 1.6 / (0.25 * 0.25), made.Columns[0].LoadRatio, 12);
    }

    private static double Correlation(IReadOnlyList<ColumnPlan> columns, Func<ColumnPlan, double> place)
    {
        double d = columns.Average(c => c.Diameter),
            p = columns.Average(place);
        double both = columns.Sum(c => (c.Diameter - d) * (place(c) - p));
        return both
            / Math.Sqrt(
                columns.Sum(c => (c.Diameter - d) * (c.Diameter - d))
                    * columns.Sum(c => (place(c) - p) * (place(c) - p))
            );
    }

    private static Vector3D[] Nearest(PrintedObject printed, Vector3D middle, Vector3D axis, out double area)
    {
        (double Area, Vector3D[] Points) found = printed
            .Section(middle, axis)
            .MinBy(c => c.Points.Max(p => (p - middle).Length));
        area = found.Area;
        return found.Points;
    }
}
