using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;
using NetTopologySuite.Geometries;

namespace CalibGeom.Tests.TestObjects;

public class GaugeBandTests
{
    private static readonly Gen<TestObjectSpec> Nests =
        from nest in PrintableSpecs.Nest
        from tilt in Gen.OneOf(Gen.Constant(0.0), PrintableSpecs.Between(-12, 12))
        from axis in Gen.Elements(TiltAxis.X, TiltAxis.Y)
        select new TestObjectSpec
        {
            Nest = nest,
            Spans = null,
            Columns = null,
            Slots = null,
            Squeeze = null,
            Labels = null,
            Tilt = new TiltSpec { Axis = axis, Angle = tilt },
        };

    [Fact]
    public void EveryFaceLiesWithinHalfAGridUnitOfNominalAndWithinTwoWhenTilted()
    {
        int accepted = 0;
        Check.One(
            PropertySeed.Runs(60),
            Prop.ForAll(
                Nests.ToArbitrary(),
                spec =>
                {
                    TestObject made = TestObject.Of(spec);
                    if (made.HasErrors)
                        return;
                    accepted++;
                    var printed = new PrintedObject(made);
                    double tolerance = (spec.Tilt.Angle == 0 ? 0.5 : 2) * PrintedObject.Unit + 1e-9;
                    foreach (BoxPlan box in made.Boxes)
                    {
                        (Vector3D[] outer, Vector3D[] pocket) = printed.BoxSection(
                            box,
                            (box.BandBottom + box.BandTop) / 2
                        );
                        RequireFaces(outer, box, box.Outside, tolerance);
                        if (box.HasPocket)
                            RequireFaces(pocket, box, box.Inside, tolerance);
                    }
                }
            )
        );
        Assert.True(accepted > 30, $"only {accepted} of 60 objects passed the rules");
    }

    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(10, 2)]
    public void TheSectionsOfTheStandardBoxesAreThePolygonsThatAnIndependentLibraryDraws(double tilt, double units)
    {
        PrintedObject printed = PrintedObject.Of(new TestObjectSpec { Tilt = new TiltSpec { Angle = tilt } });
        foreach (BoxPlan box in printed.Made.Boxes)
        {
            (Vector3D[] outer, _) = printed.BoxSection(box, (box.BandBottom + box.BandTop) / 2);
            Geometry expected = Rounded(box, 0.8, 1.6),
                section = PrintedObject.ToPolygon(outer);
            double tolerance = section.Length * units * PrintedObject.Unit;
            Assert.InRange(expected.SymmetricDifference(section).Area, 0, tolerance);
        }
    }

    [Fact]
    public void TheGaugeBandsAreLevelAndAtLeastThreeMillimetresAboveThePlinth()
    {
        foreach (Preset preset in Presets.All)
        {
            PrintedObject printed = PrintedObject.Of(preset.Spec);
            foreach (BoxPlan box in printed.Made.Boxes)
            {
                Assert.InRange(box.BandBottom - preset.Spec.Plinth.Thickness, 3 - 1e-3, double.MaxValue);
                Assert.Equal(preset.Spec.Nest!.GaugeBand, box.BandTop - box.BandBottom, 1e-9);
                (Vector3D[] low, _) = printed.BoxSection(box, box.BandBottom + 0.001);
                (Vector3D[] high, _) = printed.BoxSection(box, box.BandTop - 0.001);
                Assert.InRange(
                    PrintedObject.ToPolygon(low).SymmetricDifference(PrintedObject.ToPolygon(high)).Area,
                    0,
                    1e-9
                );
            }
        }
    }

    /// <summary>A square with three corners rounded in steps of 7.5 degrees and one cut at 45 degrees.</summary>
    private static Geometry Rounded(BoxPlan box, double radius, double cut)
    {
        double x = box.Outside.X / 2,
            y = box.Outside.Y / 2;
        Geometry rounded = Rectangle(box.X - x + radius, box.Y - y + radius, box.X + x - radius, box.Y + y - radius)
            .Buffer(radius, 12);
        Geometry corner = Rectangle(box.X, box.Y - y, box.X + x, box.Y);
        Geometry triangle = new Polygon(
            new LinearRing([
                new(box.X + x - cut, box.Y - y),
                new(box.X + x, box.Y - y + cut),
                new(box.X + x, box.Y - y),
                new(box.X + x - cut, box.Y - y),
            ])
        );
        return rounded.Union(corner).Difference(triangle);
    }

    private static Polygon Rectangle(double x0, double y0, double x1, double y1) =>
        new(new LinearRing([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1), new(x0, y0)]));

    private static void RequireFaces(Vector3D[] ring, BoxPlan box, PerAxis width, double tolerance)
    {
        Assert.Equal(box.X + width.X / 2, ring.Max(p => p.X), tolerance);
        Assert.Equal(box.X - width.X / 2, ring.Min(p => p.X), tolerance);
        Assert.Equal(box.Y + width.Y / 2, ring.Max(p => p.Y), tolerance);
        Assert.Equal(box.Y - width.Y / 2, ring.Min(p => p.Y), tolerance);
        // A face is straight: both of its ends lie on it.
        Assert.True(ring.Count(p => Math.Abs(p.X - box.X - width.X / 2) <= tolerance) >= 2);
        Assert.True(ring.Count(p => Math.Abs(p.Y - box.Y - width.Y / 2) <= tolerance) >= 2);
    }
}
