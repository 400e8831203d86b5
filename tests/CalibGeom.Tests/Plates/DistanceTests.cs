using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Plates;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Plates;

public class DistanceTests
{
    [Property(MaxTest = 150)]
    public Property NoPairOfPointsIsNearerThanTheDistanceBetweenTriangles() =>
        Prop.ForAll(
            Triangles(2),
            t =>
            {
                double distance = Math.Sqrt(TriangleDistance.Squared(t[0], t[1], t[2], t[3], t[4], t[5]));
                double sampled = Samples(t[0], t[1], t[2]).Min(p => Samples(t[3], t[4], t[5]).Min(q => (p - q).Length));
                return distance <= sampled + 1e-9 && distance >= sampled - Longest(t) / Steps;
            }
        );

    [Property(MaxTest = 300)]
    public Property ThePlaneAgreesWithSpace() =>
        Prop.ForAll(
            Triangles(2),
            t =>
            {
                var flat = t.Select(v => v with { Z = 0 }).ToArray();
                double space = TriangleDistance.Squared(flat[0], flat[1], flat[2], flat[3], flat[4], flat[5]);
                double[] one = flat.Take(3).SelectMany(v => new[] { v.X, v.Y }).ToArray(),
                    other = flat.Skip(3).SelectMany(v => new[] { v.X, v.Y }).ToArray();
                double plane = PlanarDistance.Squared(one, other, 0, 0);
                return Math.Abs(Math.Sqrt(space) - Math.Sqrt(plane)) < 1e-6;
            }
        );

    [Fact]
    public void KnownDistances()
    {
        Vector3D a = new(0, 0, 0),
            b = new(4, 0, 0),
            c = new(0, 4, 0);
        Assert.Equal(9, TriangleDistance.Squared(a, b, c, new(1, 1, 3), new(2, 1, 5), new(1, 2, 5)), 12);
        Assert.Equal(0, TriangleDistance.Squared(a, b, c, new(1, 1, -1), new(1, 1, 1), new(9, 9, 1)));
        Assert.Equal(4, TriangleDistance.Squared(a, b, c, new(2, -1, 2), new(2, 1, 2), new(2, 0, 9)), 12);
        Assert.Equal(24.5, TriangleDistance.Squared(a, b, c, new(7, 4, 0), new(9, 9, 0), new(12, 4, 0)), 12);
    }

    /// <summary>By asking all marked cells; a line may be marked all along.</summary>
    [Property(MaxTest = 100)]
    public void ACellIsAsFarAsTheNearestMarkedOne(int seed, byte wide, byte high, bool row)
    {
        int columns = 1 + wide % 12,
            rows = 1 + high % 12,
            full = (seed & 0xff) % rows;
        bool Marked(int x, int y) => (row && y == full) || (seed >> (7 * x + 3 * y) % 31 & 7) == 0;
        (int X, int Y)[] all =
        [
            .. from x in Enumerable.Range(0, columns)
            from y in Enumerable.Range(0, rows)
            where Marked(x, y)
            select (x, y),
        ];
        float[] found = DistanceTransform.Of(columns, rows, Marked);
        for (int i = 0; i < found.Length; i++)
        {
            (int x, int y) = (i % columns, i / columns);
            double nearest = all.Select(p => double.Hypot(p.X - x, p.Y - y)).Append(double.PositiveInfinity).Min();
            Assert.Equal(nearest, found[i], 1e-5);
        }
    }

    [Property(MaxTest = 40)]
    public Property AStreamPastATreeFindsTheNearestPair() =>
        Prop.ForAll(
            Triangles(40),
            Triangles(60),
            (one, other) =>
            {
                TriangleMesh coupon = Soup(one),
                    part = Soup(other);
                var proof = new DistanceProof([coupon]);
                proof.Pass(PlatePart.Of("part", part), _ => { });
                double brute = double.PositiveInfinity;
                for (int i = 0; i < one.Length; i += 3)
                for (int k = 0; k < other.Length; k += 3)
                    brute = Math.Min(
                        brute,
                        TriangleDistance.Squared(one[i], one[i + 1], one[i + 2], other[k], other[k + 1], other[k + 2])
                    );
                return Math.Abs(Math.Sqrt(brute) - proof.Distance) < 1e-6;
            }
        );

    [Property(MaxTest = 60)]
    public Property TreesOfThePlaneFindTheNearestPair() =>
        Prop.ForAll(
            Triangles(30),
            Triangles(50),
            (one, other) =>
            {
                double[] a = Flat(one),
                    b = Flat(other);
                double brute = double.PositiveInfinity,
                    point = double.PositiveInfinity;
                for (int i = 0; i < a.Length; i += 6)
                {
                    point = Math.Min(point, PlanarDistance.Squared(a.AsSpan(i, 6), 31, 5));
                    for (int k = 0; k < b.Length; k += 6)
                        brute = Math.Min(brute, PlanarDistance.Squared(a.AsSpan(i, 6), b.AsSpan(k, 6), 17, 20));
                }
                var tree = new PlanarTriangles(Flat(one));
                return Math.Abs(tree.Distance(new PlanarTriangles(b), 17, 20, 1e3) - Math.Sqrt(brute)) < 1e-9
                    && Math.Abs(tree.Distance(31, 5, 1e3) - Math.Sqrt(point)) < 1e-9
                    && tree.Distance(31, 5, 0.25) <= 0.25;
            }
        );

    [Property(MaxTest = 60)]
    public Property TheDistanceTransformFindsTheNearestMark(ulong seed) =>
        Prop.ForAll(
            Gen.Choose(1, 13).ToArbitrary(),
            Gen.Choose(1, 13).ToArbitrary(),
            (columns, rows) =>
            {
                bool Marked(int column, int row) => (seed * 31 + (ulong)(column * 7 + row * 13)) % 11 == 0;
                float[] field = DistanceTransform.Of(columns, rows, Marked);
                for (int row = 0; row < rows; row++)
                for (int column = 0; column < columns; column++)
                {
                    double brute = double.PositiveInfinity;
                    for (int r = 0; r < rows; r++)
                    for (int c = 0; c < columns; c++)
                        if (Marked(c, r))
                            brute = Math.Min(brute, double.Hypot(r - row, c - column));
                    double found = field[row * columns + column];
                    if (double.IsInfinity(brute) != double.IsInfinity(found) || Math.Abs(brute - found) > 1e-5)
                        return false;
                }
                return true;
            }
        );

    [Property(MaxTest = 25)]
    public Property ARasterIsNeverTooSmall() =>
        Prop.ForAll(
            Triangles(6),
            t =>
            {
                var plate = new Plate(80, 50);
                var raster = new ShadowRaster(plate);
                PlatePart.Of("part", Soup(t)).Visit(f => raster.Mark(f, 8));
                for (int i = 0; i < t.Length; i += 3)
                    foreach (Vector3D p in Samples(Single(t[i]), Single(t[i + 1]), Single(t[i + 2])))
                    {
                        if (p.Z >= 8 || Math.Abs(p.X) >= 40 || Math.Abs(p.Y) >= 25)
                            continue;
                        int column = Math.Min(raster.Columns - 1, (int)((p.X + 40) / raster.Cell)),
                            row = Math.Min(raster.Rows - 1, (int)((p.Y + 25) / raster.Cell));
                        if (!raster[column, row])
                            return false;
                    }
                var tree = new PlanarTriangles(raster.ToTriangles());
                return tree.IsEmpty || tree.MaxX - tree.MinX <= 80 + raster.Cell;
            }
        );

    [Fact]
    public void AHullStandsForAShadowOnlyWhereItChangesNothing()
    {
        double[] square = [0, 0, 10, 0, 10, 10, 0, 0, 10, 10, 0, 10],
            notch = [.. square, 10, 0, 20, 0, 20, 10],
            hole = [.. notch, 10, 0, 20, 10, 10, 9.5];
        Assert.Equal(100, Area(ConvexShadow.Of(new PlanarTriangles((double[])[.. square, 2, 2, 5, 2, 4, 8]))!), 9);
        Assert.Null(ConvexShadow.Of(new PlanarTriangles(notch)));
        Assert.Null(ConvexShadow.Of(new PlanarTriangles(hole)));
        Assert.Equal([(0, 0), (20, 0), (20, 10), (0, 10)], ConvexHull.Of(hole.Chunk(2).Select(p => (p[0], p[1]))));

        static double Area(double[] t) =>
            Enumerable
                .Range(0, t.Length / 6)
                .Sum(i =>
                    (t[6 * i + 2] - t[6 * i]) * (t[6 * i + 5] - t[6 * i + 1])
                    - (t[6 * i + 3] - t[6 * i + 1]) * (t[6 * i + 4] - t[6 * i])
                ) / 2;
    }

    private const int Steps = 12;

    private static Vector3D Single(Vector3D v) => new((float)v.X, (float)v.Y, (float)v.Z);

    private static double[] Flat(Vector3D[] t) => t.SelectMany(v => new[] { v.X, v.Y }).ToArray();

    private static TriangleMesh Soup(Vector3D[] t) =>
        new(t.SelectMany(v => new[] { v.X, v.Y, v.Z }).ToArray(), Enumerable.Range(0, t.Length).ToArray());

    private static double Longest(Vector3D[] t) =>
        Enumerable.Range(0, 6).Max(i => (t[i] - t[i / 3 * 3 + (i + 1) % 3]).Length) * 2;

    private static IEnumerable<Vector3D> Samples(Vector3D a, Vector3D b, Vector3D c)
    {
        for (int i = 0; i <= Steps; i++)
        for (int k = 0; i + k <= Steps; k++)
            yield return a + (b - a) * (i / (double)Steps) + (c - a) * (k / (double)Steps);
    }

    private static Arbitrary<Vector3D[]> Triangles(int count) =>
        Gen.ArrayOf(
                (
                    from centre in Point(30)
                    from a in Point(12)
                    from b in Point(12)
                    from c in Point(12)
                    select new[] { centre + a, centre + b, centre + c }
                ),
                count
            )
            .Select(t => t.SelectMany(v => v).ToArray())
            .ToArbitrary();

    private static Gen<Vector3D> Point(int range) =>
        from x in Gen.Choose(-range * 16, range * 16)
        from y in Gen.Choose(-range * 16, range * 16)
        from z in Gen.Choose(-range * 16, range * 16)
        select new Vector3D(x / 16.0, y / 16.0, z / 16.0);
}
