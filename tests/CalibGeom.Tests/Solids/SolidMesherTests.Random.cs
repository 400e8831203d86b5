using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Solids;

public class SolidMesherRandomTests
{
    /// <summary>A star-shaped polygon about a point: never self-crossing, its corners anywhere on the grid.</summary>
    internal static Outline Star(double x, double y, double[] radii)
    {
        int n = radii.Length;
        return Outline.FromMillimetres(
            radii.Select(
                (r, i) => new Vector2D(x + r * Math.Cos(2 * Math.PI * i / n), y + r * Math.Sin(2 * Math.PI * i / n))
            )
        );
    }

    private static readonly Gen<Outline> Stars =
        from x in Gen.Choose(-2000, 2000)
        from y in Gen.Choose(-2000, 2000)
        from n in Gen.Choose(3, 40)
        from radii in Gen.Choose(1500, 9000).ArrayOf(n)
        select Star(x / 1000.0, y / 1000.0, Array.ConvertAll(radii, r => r / 1000.0));

    public static Arbitrary<Outline[]> Stacks() => Stars.ArrayOf(4).ToArbitrary();

    [Fact]
    public void StacksOfRandomStarsAreClosed()
    {
        // Each storey crosses the one below in many places; whatever the overlay rounds, the surface must stay closed.
        // Only a sliver thinner
        // than a grid unit along another border may be refused, and so few that the test would notice a mesher that
        // refuses its mistakes.
        var random = new Random(20261125);
        int refused = 0;
        for (int i = 0; i < 400; i++)
            if (!IsClosed([.. Enumerable.Range(0, 4).Select(_ => RandomStar(random))]))
                refused++;
        Assert.InRange(refused, 0, 2);
    }

    private static Outline RandomStar(Random random) =>
        Star(
            2 - 4 * random.NextDouble(),
            2 - 4 * random.NextDouble(),
            [.. Enumerable.Range(0, random.Next(3, 41)).Select(_ => 1.5 + 7.5 * random.NextDouble())]
        );

    private static bool IsClosed(Outline[] stack)
    {
        Solid solid = Stack(stack);
        TriangleMesh mesh;
        try
        {
            mesh = solid.ToMesh();
        }
        catch (ArgumentException e) when (e.Message.Contains("less than the grid", StringComparison.Ordinal))
        {
            return false;
        }
        SurfaceCheck.RequireClosed(mesh);
        // Rounding a crossing bends a wall by half a grid unit at most.
        Assert.Equal(solid.Volume, mesh.Volume, 0.5 / Grid.UnitsPerMillimetre * mesh.Area);
        return true;
    }

    private static Solid Stack(Outline[] stack) => new(stack.Select((s, i) => Loft.Prism(s, 3 * i, 3 * i + 3)));

    [Property(MaxTest = 60, Arbitrary = [typeof(SolidMesherRandomTests)])]
    public void ATiltedTowerIsClosed(Outline[] stack, int angle)
    {
        Solid solid = Stack(stack[..1]);
        TriangleMesh mesh = solid.ToMesh(angle % 2 == 0 ? TiltAxis.X : TiltAxis.Y, angle % 80);
        SurfaceCheck.RequireClosed(mesh);
        Assert.Equal(solid.Volume, mesh.Volume, 1e-4 * solid.Volume);
    }
}
