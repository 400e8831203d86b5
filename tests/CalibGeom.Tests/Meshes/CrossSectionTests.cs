using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Tests.Inspection;
using FsCheck.Xunit;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Polygonize;

namespace CalibGeom.Tests.Meshes;

public class CrossSectionTests
{
    [Theory]
    [InlineData(0.1)]
    [InlineData(1.0)]
    [InlineData(2.9)]
    public void AFrustumsSectionShrinksWithTheSquareOfTheHeight(double z)
    {
        const int n = 40;
        TriangleMesh frustum = Shapes.Revolve(n, (0, 0), (4, 0), (1, 3), (0, 3));
        CrossSection section = frustum.CrossSection(z);
        double radius = 4 - z;
        Assert.Equal(Shapes.PolygonPi(n) * radius * radius, section.Area, 1e-12);
        Assert.True(Assert.Single(section.Contours).IsClosed);
    }

    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(0.3, 0, 1)]
    [InlineData(-0.2, 0.25, 1)]
    public void AnObliqueCylindersSectionHasTheAreaThatItsAxisSweeps(double nx, double ny, double nz)
    {
        // A prism along the axis a cut by the unit normal n: area = base area * (z . a) / (n . a).
        var axis = new Vector3D(3, 1, 10);
        Vector2D[] bottom = Shapes.Star(new Random(3), 24, 0, 0, 2, 2);
        TriangleMesh column = Shapes.Prismoid(
            bottom,
            0,
            Array.ConvertAll(bottom, p => p + new Vector2D(axis.X, axis.Y)),
            axis.Z
        );
        var normal = new Vector3D(nx, ny, nz);
        double expected = Shapes.PolygonPi(24) * 4 * axis.Z * normal.Length / Vector3D.Dot(normal, axis);
        Assert.Equal(expected, column.CrossSection(new Vector3D(1.5, 0.5, 5), normal).Area, 1e-11);
    }

    [Fact]
    public void ATorusSectionIsARingAcrossItsAxisAndTwoDiscsAlongIt()
    {
        const int n = 32,
            m = 24;
        var profile = Enumerable
            .Range(0, m)
            .Select(i => (5 + 2 * Math.Cos(2 * Math.PI * i / m), 2 * Math.Sin(2 * Math.PI * i / m)))
            .ToArray();
        TriangleMesh torus = Shapes.Revolve(n, profile);
        // Through vertices at the profile's angle 30 degrees (z = 1).
        CrossSection ring = torus.CrossSection(profile[2].Item2);
        double inner = profile[10].Item1,
            outer = profile[2].Item1;
        Assert.Equal(Shapes.PolygonPi(n) * (outer * outer - inner * inner), ring.Area, 1e-10);
        Assert.Equal(2, ring.Contours.Count);
        Assert.Equal([-1, 1], ring.Contours.Select(c => Math.Sign(c.SignedArea)).Order());

        CrossSection discs = torus.CrossSection(new Vector3D(0, 0, 0), new Vector3D(0, 1, 0));
        Assert.Equal(2, discs.Contours.Count);
        Assert.All(discs.Contours, c => Assert.Equal(Shapes.PolygonPi(m) * 4, c.SignedArea, 1e-10));
    }

    [Fact]
    public void AFaceInThePlaneBelongsToTheMaterialBelowIt()
    {
        TriangleMesh box = Shapes.Box(0, 0, 0, 2, 3, 4);
        Assert.Equal(6, box.CrossSection(4).Area, 1e-15);
        Assert.Empty(box.CrossSection(0).Contours);
        Assert.Empty(box.CrossSection(4.0000001).Contours);
        Assert.Equal(12, box.CrossSection(new Vector3D(2, 0, 0), new Vector3D(1, 0, 0)).Area, 1e-15);
        Assert.Equal(12, box.CrossSection(new Vector3D(0, 0, 0), new Vector3D(-5, 0, 0)).Area, 1e-15);
    }

    [Fact]
    public void VerticesAtOnePlaceNeedNotBeShared()
    {
        TriangleMesh shared = Shapes.Box(0, 0, 0, 2, 3, 4);
        double[] soup = Enumerable
            .Range(0, shared.TriangleCount)
            .Select(shared.Triangle)
            .SelectMany(t => new[] { t.A, t.B, t.C })
            .SelectMany(v => new[] { v.X, v.Y, v.Z })
            .ToArray();
        var mesh = new TriangleMesh(soup, Enumerable.Range(0, soup.Length / 3).ToArray());
        Assert.True(Assert.Single(mesh.CrossSection(1).Contours).IsClosed);
    }

    [Fact]
    public void AnOpenMeshGivesAContourThatSaysSo()
    {
        TriangleMesh box = Shapes.Box(0, 0, 0, 2, 2, 2);
        int[] without = Enumerable
            .Range(0, box.TriangleCount)
            .Where(t => new[] { box.Triangle(t).A, box.Triangle(t).B, box.Triangle(t).C }.Any(v => v.X < 1))
            .SelectMany(t => box.Triangles.Slice(3 * t, 3).ToArray())
            .ToArray();
        SectionContour contour = Assert.Single(new TriangleMesh(box.Coordinates, without).CrossSection(0.7).Contours);
        Assert.False(contour.IsClosed);
        Assert.Equal(4, contour.SignedArea, 1e-12);
    }

    [Fact]
    public void APlaneNeedsAFinitePointAndANormal()
    {
        TriangleMesh box = Shapes.Box(0, 0, 0, 1, 1, 1);
        Assert.Throws<ArgumentException>(() => box.CrossSection(double.NaN));
        Assert.Throws<ArgumentException>(() => box.CrossSection(new Vector3D(), new Vector3D()));
        Assert.Throws<ArgumentException>(() =>
            box.CrossSection(new Vector3D(), new Vector3D(double.PositiveInfinity, 0, 0))
        );
        Assert.Empty(TriangleMesh.Empty.CrossSection(1).Contours);
    }

    [Property(MaxTest = 60)]
    public bool TheFrameIsRightHandedAndKeepsPoints(int seed)
    {
        var random = new Random(seed);
        Vector3D V() => new(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5);
        var frame = new SectionFrame(V(), V());
        var p = new Vector2D(random.NextDouble(), random.NextDouble());
        Vector2D back = frame.ToPlane(frame.ToSpace(p));
        return (Vector3D.Cross(frame.AxisX, frame.AxisY) - frame.Normal).Length < 1e-12
            && frame.AxisX.Z == 0
            && Math.Abs(back.X - p.X) < 1e-12
            && Math.Abs(back.Y - p.Y) < 1e-12;
    }

    [Property(MaxTest = 60)]
    public void EverySectionOfAClosedBodyEqualsThePolygonsThatNetTopologySuiteFinds(int seed)
    {
        var random = new Random(seed);
        int n = random.Next(3, 20);
        TriangleMesh body = Shapes.Prismoid(
            Shapes.Star(random, n, 0, 0, 1, 4),
            0,
            Shapes.Star(random, n, 1, 0, 1, 4),
            5
        );
        var normal = new Vector3D(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5);
        CrossSection section = body.CrossSection(new Vector3D(0.3, 0.2, 2.5), normal);
        Assert.All(section.Contours, c => Assert.True(c.IsClosed));
        Assert.Equal(PolygonizedArea(body, section.Frame), section.Area, 1e-6);
        Assert.All(
            section.Contours.SelectMany(c => c.Points.ToArray()),
            p => Assert.Equal(0, Vector3D.Dot(p - section.Frame.Origin, section.Frame.Normal), 1e-12)
        );
    }

    /// <summary>
    /// The cut of each triangle for itself, polygons by NetTopologySuite; valid where no vertex lies on the plane.
    /// </summary>
    private static double PolygonizedArea(TriangleMesh mesh, SectionFrame frame)
    {
        var factory = new GeometryFactory(new PrecisionModel(1e8));
        var polygonizer = new Polygonizer();
        double H(Vector3D v) => Vector3D.Dot(v - frame.Origin, frame.Normal);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            Coordinate[] cuts = new[] { (a, b), (b, c), (c, a) }
                .Where(e => H(e.Item1) > 0 != H(e.Item2) > 0)
                .Select(e => e.Item1 + (e.Item2 - e.Item1) * (H(e.Item1) / (H(e.Item1) - H(e.Item2))))
                .Select(frame.ToPlane)
                .Select(p => new Coordinate(Math.Round(p.X * 1e8) / 1e8, Math.Round(p.Y * 1e8) / 1e8))
                .ToArray();
            if (cuts.Length == 2 && !cuts[0].Equals2D(cuts[1]))
                polygonizer.Add(factory.CreateLineString(cuts));
        }
        return polygonizer.GetPolygons().Sum(p => p.Area);
    }
}
