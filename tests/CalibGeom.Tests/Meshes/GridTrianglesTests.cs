using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;

namespace CalibGeom.Tests.Meshes;

public class GridTrianglesTests
{
    [Fact]
    public void TheIntegerTestAndThatOfTheInspectionAgree()
    {
        // Two programs for one question: the mesher's on 128-bit integers, the inspection's on filtered doubles. A
        // small cube makes contact,
        // common planes and collinear edges frequent.
        var random = new Random(4711);
        int meeting = 0;
        for (int i = 0; i < 4000; i++)
        {
            GridPoint3D[] p =
            [
                .. Enumerable.Range(0, 6).Select(_ => new GridPoint3D(random.Next(5), random.Next(5), random.Next(5))),
            ];
            if (p.Distinct().Count() < 6 || IsFlat(p[0], p[1], p[2]) || IsFlat(p[3], p[4], p[5]))
                continue;
            bool touch = GridTriangles.Touch(new(p[0], p[1], p[2]), new(p[3], p[4], p[5]));
            double[] coordinates = [.. p.SelectMany(v => new double[] { v.X, v.Y, v.Z })];
            TopologyReport report = MeshTopology.Run(new TriangleMesh(coordinates, [0, 1, 2, 3, 4, 5]));
            Assert.Equal(report[DefectKind.Crossing].Count + report[DefectKind.Contact].Count > 0, touch);
            if (touch)
                meeting++;
        }
        Assert.InRange(meeting, 300, 3000);
    }

    private static bool IsFlat(GridPoint3D a, GridPoint3D b, GridPoint3D c) =>
        GridTriangles.Normal(a, b, c) == (0, 0, 0);
}
