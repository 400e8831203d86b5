using CalibGeom.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Meshes;

public class TopologyCountTests
{
    // CHECKS.md section 11 (Euler / Gauss-Bonnet): box 2, tube 0, two disjoint boxes 4.
    [Fact]
    public void BoxTorusAndTwoBoxes()
    {
        Counts(SampleMeshes.Box(10, 20, 30), 2, 1, 0);
        Counts(SampleMeshes.Tetrahedron(), 2, 1, 0);
        Counts(SampleMeshes.Torus(9, 2, 20, 10), 0, 1, 1);
        Counts(TriangleMesh.Join([SampleMeshes.Box(1, 1, 1), SampleMeshes.Box(1, 1, 1, new(5, 0, 0))]), 4, 2, 0);
    }

    [Fact]
    public void GenusIsRefusedWhereItMeansNothing()
    {
        TriangleMesh box = SampleMeshes.Box(1, 1, 1);
        TriangleMesh open = new(box.Coordinates, box.Triangles[3..]);
        Assert.False(open.IsClosed);
        Assert.Throws<InvalidOperationException>(() => open.Genus);
        TriangleMesh touching = TriangleMesh.Join([box, SampleMeshes.Box(1, 1, 1, new(1, 1, 1))]).Weld();
        Assert.True(touching.IsClosed);
        Assert.Equal(2, touching.ComponentCount);
        Assert.Throws<InvalidOperationException>(() => touching.Genus);
        Assert.False(TriangleMesh.Empty.IsClosed);
    }

    // 3MF sample box (CHECKS.md 10.3): 8 vertices, 12 triangles, 6000 mm3, 2200 mm2.
    [Fact]
    public void WeldingASoupGivesTheSolidBack()
    {
        TriangleMesh box = SampleMeshes.Box(10, 20, 30);
        double[] loose =
        [
            .. box
                .Triangles.ToArray()
                .SelectMany(v => new[] { box.Vertex(v).X, box.Vertex(v).Y, box.Vertex(v).Z })
                .Select(c => c == 0 ? -0.0 : c),
        ];
        TriangleMesh soup = new(loose, Enumerable.Range(0, 36).ToArray());
        Assert.Equal(36, soup.VertexCount);
        TriangleMesh welded = soup.Weld();
        Assert.Equal((8, 12, 2), (welded.VertexCount, welded.TriangleCount, welded.EulerCharacteristic));
        Assert.Equal(6000, welded.Volume, 1e-9);
        Assert.Equal(2200, welded.Area, 1e-9);
    }

    [Property(MaxTest = 60)]
    public Property MovingABodyKeepsItsCounts()
    {
        Gen<Affine3D> moves =
            from x in Gen.Choose(0, 3)
            from y in Gen.Choose(0, 3)
            from z in Gen.Choose(0, 3)
            from shift in Gen.Choose(-4096, 4096)
            from mirror in Gen.Elements(1.0, -1.0)
            select Affine3D
                .TurnX(90 * x)
                .Then(Affine3D.TurnY(90 * y))
                .Then(Affine3D.TurnZ(90 * z))
                .Then(Affine3D.Scale(mirror))
                .Then(Affine3D.Shift(new(shift / 8192.0, 1, -2)));
        return Prop.ForAll(
            SampleMeshes.Bodies().ToArbitrary(),
            moves.ToArbitrary(),
            (body, move) =>
            {
                TriangleMesh moved = body.Transform(move);
                Assert.Equal(body.Genus, moved.Genus);
                Assert.Equal(body.ComponentCount, moved.ComponentCount);
                Assert.Equal(body.Volume, moved.Volume, 1e-9 * body.Volume);
                Assert.Equal(-body.Volume, moved.Reverse().Volume, 1e-9 * body.Volume);
            }
        );
    }

    [Property(MaxTest = 200)]
    public Property EdgesAgreeWithASlowCount() =>
        Prop.ForAll(
            SampleMeshes.Soups().ToArbitrary(),
            mesh =>
            {
                int[] t = mesh.Triangles.ToArray();
                var expected = Enumerable
                    .Range(0, t.Length)
                    .Select(h => (A: t[h], B: t[MeshEdges.Next(h)]))
                    .Where(e => e.A != e.B)
                    .GroupBy(e => (Math.Min(e.A, e.B), Math.Max(e.A, e.B)))
                    .ToDictionary(g => g.Key, g => g.Count());
                var edges = new MeshEdges(t, mesh.VertexCount);
                Assert.Equal(expected.Count, edges.Count);
                for (int e = 0; e < edges.Count; e++)
                {
                    int h = edges.HalfEdge(e, 0);
                    int a = t[h],
                        b = t[MeshEdges.Next(h)];
                    Assert.Equal(expected[(Math.Min(a, b), Math.Max(a, b))], edges.Uses(e));
                }
            }
        );

    private static void Counts(TriangleMesh mesh, int euler, int components, int genus)
    {
        Assert.True(mesh.IsClosed);
        Assert.Equal((euler, components, genus), (mesh.EulerCharacteristic, mesh.ComponentCount, mesh.Genus));
    }
}
