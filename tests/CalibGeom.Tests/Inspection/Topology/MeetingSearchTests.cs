using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Inspection.Topology;

/// <summary>Long thin triangles that lie aslant: all pairs that meet are found, and few others are looked at.</summary>
public class MeetingSearchTests
{
    [Property(MaxTest = 25)]
    public Property FindsThePairsThatTryingAllFinds() =>
        Prop.ForAll(
            Gen.Choose(0, int.MaxValue).ToArbitrary(),
            seed =>
            {
                TriangleMesh mesh = Thorns(new Random(seed)).Weld();
                var exact = new ExactMesh(mesh);
                int[] t = mesh.Triangles.ToArray();
                var meeting = new TriangleMeeting(exact, t);
                var expected = new List<(int, int)>();
                for (int i = 0; i < mesh.TriangleCount; i++)
                for (int j = i + 1; j < mesh.TriangleCount; j++)
                    if (meeting.Of(i, j) != Meeting.None)
                        expected.Add((i, j));
                var found = new SelfMeetings(mesh, exact, new bool[mesh.TriangleCount], _ => { });
                Assert.Equal(expected, found.Crossings.Concat(found.Contacts).Order());
                Assert.True(expected.Count > 20, $"only {expected.Count} pairs meet");
            }
        );

    /// <summary>Two fans whose triangles cross here and there, single thorns, and blocks they may run into.</summary>
    private static TriangleMesh Thorns(Random random)
    {
        var corners = new List<double>();
        double Grid(double size) => Math.Round((random.NextDouble() - 0.5) * size * 8192) / 8192;
        void Add(params ReadOnlySpan<double> point) => corners.AddRange(point);
        for (int fan = 0; fan < 2; fan++)
        {
            (double x, double y, double z) = (Grid(4), Grid(4), Grid(4));
            for (int i = 0; i < 130; i++)
            {
                double turn = 2 * Math.PI * random.NextDouble(),
                    wide = 0.04 * random.NextDouble() + 0.001,
                    fall = Grid(1.5);
                Add(x, y, z);
                Add(x + 10 * Math.Cos(turn), y + 10 * Math.Sin(turn), z + 6 + fall);
                Add(x + 10 * Math.Cos(turn + wide), y + 10 * Math.Sin(turn + wide), z + 6 + Grid(1.5));
            }
        }
        for (int i = 0; i < 90; i++)
        {
            (double x, double y, double z) = (Grid(12), Grid(12), Grid(12));
            Add(x, y, z);
            Add(x + 9 + Grid(3), y + 9 + Grid(3), z + 9 + Grid(3));
            Add(x + Grid(0.3), y + Grid(0.3), z + Grid(0.3));
        }
        for (int i = 0; i < 60; i++)
        {
            (double x, double y, double z) = (Grid(20), Grid(20), Grid(20));
            Add(x, y, z, x + 1, y + Grid(1), z, x, y + Grid(2) + 1, z + 1);
        }
        return new TriangleMesh(corners.ToArray(), [.. Enumerable.Range(0, corners.Count / 3)]);
    }

    /// <summary>
    /// Fans, cones, slanting cylinders: the pairs looked at grow with the triangles, not with their square.
    /// </summary>
    [Theory]
    [InlineData(20, 0, 12, 0)]
    [InlineData(20, 20, 4, 0)]
    [InlineData(10, 20, 10, 0)]
    [InlineData(5, 5, 60, 0.7)]
    [InlineData(20, 0.5, 15, 0.3)]
    public void LooksAtFewPairs(double bottom, double top, double height, double tilt)
    {
        double few = PairsFor(Turned(250)) / 250.0,
            many = PairsFor(Turned(2500)) / 2500.0;
        Assert.True(many < 100 && many < 1.5 * few, $"{few} and {many} pairs a step of the turn");

        TriangleMesh Turned(int steps) => Frustum(steps, bottom, top, height, tilt);
    }

    private static long PairsFor(TriangleMesh mesh)
    {
        long count = 0;
        foreach (
            Action<Func<int, int, bool>> part in new MeetingSearch(
                mesh,
                [.. Enumerable.Range(0, mesh.TriangleCount)]
            ).Parts
        )
            part(
                (_, _) =>
                {
                    count++;
                    return true;
                }
            );
        return count;
    }

    /// <summary>
    /// Walls of a round frustum, its top a point where the radius is 0, its bottom a fan about one rim corner.
    /// </summary>
    private static TriangleMesh Frustum(int steps, double bottom, double top, double height, double tilt)
    {
        var corners = new double[6 * steps];
        var triangles = new List<int>();
        for (int i = 0; i < steps; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * i / steps);
            Put(i, bottom * cos, bottom * sin, 0);
            Put(steps + i, top * cos, top * sin, height);
            int next = (i + 1) % steps;
            triangles.AddRange([i, next, steps + next]);
            if (top > 0)
                triangles.AddRange([i, steps + next, steps + i]);
            if (i > 0 && next > 0)
                triangles.AddRange([0, next, i]);
        }
        return new TriangleMesh(corners, triangles.ToArray()).Weld();

        void Put(int number, double x, double y, double z)
        {
            (double sin, double cos) = Math.SinCos(tilt);
            corners[3 * number] = x;
            corners[3 * number + 1] = y * cos - z * sin;
            corners[3 * number + 2] = y * sin + z * cos;
        }
    }
}
