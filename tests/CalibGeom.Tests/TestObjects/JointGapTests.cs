using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;
using NetTopologySuite.Geometries;

namespace CalibGeom.Tests.TestObjects;

public class JointGapTests
{
    [Fact]
    public void NestedVirtuallyEveryJointHasItsClearanceOverTheBandsThatMeet()
    {
        int joints = 0;
        Gen<TestObjectSpec> specs = PrintableSpecs.Nest.Select(n => new TestObjectSpec
        {
            Nest = n,
            Spans = null,
            Columns = null,
            Slots = null,
            Squeeze = null,
            Labels = null,
        });
        Check.One(
            PropertySeed.Runs(40),
            Prop.ForAll(
                specs.ToArbitrary(),
                spec =>
                {
                    TestObject made = TestObject.Of(spec);
                    if (made.HasErrors)
                        return;
                    var printed = new PrintedObject(made);
                    foreach (JointPlan joint in made.Joints)
                    {
                        joints++;
                        foreach (double share in (double[])[0.01, 0.5, 0.99])
                            RequireGap(printed, joint, share, spec.Nest!.Clearances[joint.Number - 1]);
                    }
                }
            )
        );
        Assert.True(joints > 20, $"only {joints} joints were met");
    }

    [Fact]
    public void TheStandardBoxesSlideIntoEachOtherAllTheWayToTheirSeats()
    {
        PrintedObject printed = PrintedObject.Of(new TestObjectSpec());
        foreach (JointPlan joint in printed.Made.Joints)
        {
            BoxPlan inner = printed.Made.Boxes[joint.Number - 1],
                outer = printed.Made.Boxes[joint.Number];
            double reach = outer.Outside.X / 2 + 0.1;
            for (double z = outer.PocketFloor + 0.005; z < outer.Rim; z += 0.31)
            {
                Geometry hole = PrintedObject.ToPolygon(printed.LevelSection(outer.X, outer.Y, z, reach)[1].Points);
                Polygon body = At(
                    printed.LevelSection(inner.X, inner.Y, z - joint.Lift, inner.Outside.X / 2 + 0.1)[0].Points,
                    inner,
                    outer
                );
                Assert.True(hole.Contains(body), $"joint {joint.Number} at {z}");
                Assert.InRange(hole.Boundary.Distance(body.Boundary), 0.05 - 2 * PrintedObject.Unit, double.MaxValue);
            }
        }
    }

    /// <summary>
    /// The gap per side between the inner box's outside and the pocket, each where it is printed, put over each other.
    /// </summary>
    private static void RequireGap(PrintedObject printed, JointPlan joint, double share, PerAxis wanted)
    {
        BoxPlan inner = printed.Made.Boxes[joint.Number - 1],
            outer = printed.Made.Boxes[joint.Number];
        double z = joint.EngagedFrom + share * (joint.EngagedTo - joint.EngagedFrom),
            tolerance = 2 * PrintedObject.Unit;
        (_, Vector3D[] pocket) = printed.BoxSection(outer, z);
        (Vector3D[] body, _) = printed.BoxSection(inner, z - joint.Lift);
        Assert.Equal(wanted.X, pocket.Max(p => p.X) - outer.X - (body.Max(p => p.X) - inner.X), tolerance);
        Assert.Equal(wanted.X, body.Min(p => p.X) - inner.X - (pocket.Min(p => p.X) - outer.X), tolerance);
        Assert.Equal(wanted.Y, pocket.Max(p => p.Y) - outer.Y - (body.Max(p => p.Y) - inner.Y), tolerance);
        Assert.Equal(wanted.Y, body.Min(p => p.Y) - inner.Y - (pocket.Min(p => p.Y) - outer.Y), tolerance);
        if (Math.Min(wanted.X, wanted.Y) < 0.001)
            return;
        double distance = PrintedObject.ToPolygon(pocket).Boundary.Distance(At(body, inner, outer).Boundary);
        Assert.Equal(Math.Min(wanted.X, wanted.Y), distance, tolerance);
    }

    private static Polygon At(Vector3D[] ring, BoxPlan from, BoxPlan to) =>
        PrintedObject.ToPolygon(
            Array.ConvertAll(ring, p => new Vector3D(p.X - from.X + to.X, p.Y - from.Y + to.Y, p.Z))
        );
}
