using System.Numerics;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Meshes;

public class ExactSignTests
{
    [Fact]
    public void SidesAreThoseOfTheRightHandRule()
    {
        Vector3D a = new(0, 0, 0),
            b = new(1, 0, 0),
            c = new(0, 1, 0);
        Assert.Equal(-1, Orient3D(a, b, c, new(0, 0, 1)));
        Assert.Equal(1, Orient3D(a, b, c, new(0, 0, -1e-300)));
        Assert.Equal(0, Orient3D(a, b, c, new(7, 5, 0)));
        Assert.Equal(1, ExactSign.Orient2D(0, 0, 1, 0, 0, 1));
        Assert.Equal(-1, ExactSign.Orient2D(0, 0, 0, 1, 1, 0));
    }

    // Points of a plane moved by the smallest step of a double: 0.1 + 0.2 and the like decide wrongly in plain
    // arithmetic.
    [Property(MaxTest = 300)]
    public Property ANudgeOffAPlaneIsSeen()
    {
        Gen<double> value = Gen.Choose(-1000, 1000).Select(i => i * 0.1);
        return Prop.ForAll(
            value.ArrayOf(9).ToArbitrary(),
            Gen.Choose(-3, 3).ToArbitrary(),
            (v, steps) =>
            {
                Vector3D a = new(v[0], v[1], 5.3),
                    b = new(v[2], v[3], 5.3),
                    c = new(v[4], v[5], 5.3);
                double z = 5.3;
                for (int i = 0; i < Math.Abs(steps); i++)
                    z = steps > 0 ? Math.BitIncrement(z) : Math.BitDecrement(z);
                int turn = ExactSign.Orient2D(a.X, a.Y, b.X, b.Y, c.X, c.Y);
                Assert.Equal(-turn * Math.Sign(steps), Orient3D(a, b, c, new(v[6], v[7], z)));
            }
        );
    }

    [Property(MaxTest = 300)]
    public Property IntegersOnTheGridAgreeWithLongOnes() =>
        Prop.ForAll(
            Gen.Choose(-8_388_608, 8_388_608).ArrayOf(9).ToArbitrary(),
            Gen.Choose(-1, 1).ToArbitrary(),
            (w, nudge) =>
            {
                // The fourth point is in the plane of the others but for the nudge.
                double[] units =
                [
                    .. w.Select(i => (double)i),
                    w[0] + w[3] - w[6],
                    w[1] + w[4] - w[7],
                    w[2] + w[5] - w[8] + nudge,
                ];
                var mesh = new TriangleMesh([.. units.Select(i => i / 8192)], []);
                BigInteger[] n = [.. units.Select(i => new BigInteger(i))];
                BigInteger[] d = [.. Enumerable.Range(3, 9).Select(i => n[i] - n[i % 3])];
                BigInteger det =
                    d[6] * (d[1] * d[5] - d[2] * d[4])
                    + d[7] * (d[2] * d[3] - d[0] * d[5])
                    + d[8] * (d[0] * d[4] - d[1] * d[3]);
                Assert.Equal(det.Sign, new ExactMesh(mesh).Side(0, 1, 2, 3));
                Assert.Equal(
                    -det.Sign,
                    ExactSign.Orient3DExact(mesh.Vertex(0), mesh.Vertex(1), mesh.Vertex(2), mesh.Vertex(3))
                );
            }
        );

    /// <summary>The filter, and the exact determinant where it cannot tell, as the mesh uses them.</summary>
    private static int Orient3D(Vector3D a, Vector3D b, Vector3D c, Vector3D d)
    {
        int sign = ExactSign.Filter3D(a, b, c, d);
        return sign != ExactSign.Unknown ? sign : ExactSign.Orient3DExact(a, b, c, d);
    }
}
