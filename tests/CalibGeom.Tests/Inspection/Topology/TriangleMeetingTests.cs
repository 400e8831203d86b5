using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Inspection.Topology;

public class TriangleMeetingTests
{
    // Small whole coordinates make shared vertices, planes and contacts frequent.
    private static Gen<int[]> Corners() =>
        Gen.OneOf(
            Gen.Choose(-2, 2).ArrayOf(18),
            Gen.Choose(0, 1).ArrayOf(18),
            Gen.Choose(-9, 9).ArrayOf(18),
            from flat in Gen.Choose(-4, 4).ArrayOf(12)
            select (int[])
                [
                    .. Enumerable
                        .Range(0, 6)
                        .SelectMany(i => new[] { flat[2 * i], flat[2 * i + 1], flat[2 * i] + 2 * flat[2 * i + 1] }),
                ]
        );

    [Property(MaxTest = 3000)]
    public Property AgreesWithPlainClipping() =>
        Prop.ForAll(
            Corners().ToArbitrary(),
            c =>
            {
                TriangleMesh mesh = new TriangleMesh([.. c.Select(i => i / 8192.0)], [0, 1, 2, 3, 4, 5]).Weld();
                var exact = new ExactMesh(mesh);
                int[] t = mesh.Triangles.ToArray();
                if (exact.AxisOf(t[0], t[1], t[2]) < 0 || exact.AxisOf(t[3], t[4], t[5]) < 0)
                    return;
                (Rational, Rational, Rational)[] points =
                [
                    .. Enumerable
                        .Range(0, 6)
                        .Select(i => ((Rational)c[3 * i], (Rational)c[3 * i + 1], (Rational)c[3 * i + 2])),
                ];
                Meeting expected = ClippedMeeting.Of(points[..3], points[3..]);
                Assert.Equal(expected, new TriangleMeeting(exact, t).Of(0, 1));
                Assert.Equal(expected, new TriangleMeeting(exact, t).Of(1, 0));
            }
        );

    [Property(MaxTest = 200)]
    public Property TheTreeFindsThePairsThatTryingAllFinds()
    {
        Gen<double[]> coordinates =
            from n in Gen.Choose(2, 40)
            from c in Gen.Choose(-40, 40).ArrayOf(9 * n)
            select (double[])[.. c.Select(i => i * 0.1)];
        return Prop.ForAll(
            coordinates.ToArbitrary(),
            c =>
            {
                TriangleMesh mesh = new TriangleMesh(c, Enumerable.Range(0, c.Length / 3).ToArray()).Weld();
                var exact = new ExactMesh(mesh);
                int[] t = mesh.Triangles.ToArray();
                bool[] degenerate =
                [
                    .. Enumerable
                        .Range(0, mesh.TriangleCount)
                        .Select(i => exact.AxisOf(t[3 * i], t[3 * i + 1], t[3 * i + 2]) < 0),
                ];
                var meeting = new TriangleMeeting(exact, t);
                var expected = new List<(int, int)>();
                for (int i = 0; i < mesh.TriangleCount; i++)
                for (int j = i + 1; j < mesh.TriangleCount; j++)
                    if (!degenerate[i] && !degenerate[j] && meeting.Of(i, j) != Meeting.None)
                        expected.Add((i, j));
                var found = new SelfMeetings(mesh, exact, degenerate, _ => { });
                Assert.Equal(expected, found.Crossings.Concat(found.Contacts).Order());
            }
        );
    }
}
