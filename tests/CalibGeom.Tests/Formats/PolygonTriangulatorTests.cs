using CalibGeom.Formats.Obj;
using CalibGeom.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Formats;

public class PolygonTriangulatorTests
{
    /// <summary>Star-shaped polygons, most of them concave, in a random plane.</summary>
    private static Gen<Vector3D[]> Stars() =>
        from radii in Gen.Choose(1, 40).NonEmptyListOf().Where(l => l.Count >= 3).Select(l => l.ToArray())
        from turnX in Gen.Choose(0, 359)
        from turnY in Gen.Choose(0, 359)
        let move = Affine3D.TurnX(turnX).Then(Affine3D.TurnY(turnY))
        select radii
            .Select(
                (r, i) =>
                    move.Apply(
                        new(
                            r * Math.Cos(2 * Math.PI * i / radii.Length),
                            r * Math.Sin(2 * Math.PI * i / radii.Length),
                            0
                        )
                    )
            )
            .ToArray();

    [Property(MaxTest = 150)]
    public Property TrianglesCoverThePolygonOnce() =>
        Prop.ForAll(
            Stars().ToArbitrary(),
            corners =>
            {
                int[] cut = [.. new PolygonTriangulator().Cut(corners)];
                Assert.Equal(3 * (corners.Length - 2), cut.Length);
                var normal = new Vector3D();
                double area = 0;
                for (int i = 0; i < cut.Length; i += 3)
                {
                    Vector3D twice = Vector3D.Cross(
                        corners[cut[i + 1]] - corners[cut[i]],
                        corners[cut[i + 2]] - corners[cut[i]]
                    );
                    normal += twice;
                    area += twice.Length;
                }
                Assert.Equal(normal.Length, area, 1e-9 * area);
                int[] border = Enumerable
                    .Range(0, cut.Length)
                    .Select(h => (A: cut[h], B: cut[MeshEdges.Next(h)]))
                    .Where(e => (e.A + 1) % corners.Length == e.B)
                    .Select(e => e.A)
                    .Order()
                    .ToArray();
                Assert.Equal(Enumerable.Range(0, corners.Length), border);
            }
        );

    [Fact]
    public void ABorderThatCrossesItselfKeepsItsBorder()
    {
        Vector3D[] bow = [new(0, 0, 0), new(1, 1, 0), new(1, 0, 0), new(0, 1, 0)];
        int[] cut = [.. new PolygonTriangulator().Cut(bow)];
        Assert.Equal(6, cut.Length);
        Assert.Equal([0, 1, 2, 3], cut.Distinct().Order());
    }

    [Fact]
    public void AThousandCornersOnALineTakeNoTime()
    {
        Vector3D[] line = [.. Enumerable.Range(0, 4000).Select(i => new Vector3D(i, 0, 0))];
        Assert.Equal(3 * 3998, new PolygonTriangulator().Cut(line).Count);
    }
}
