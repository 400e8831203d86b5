using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

public class LayoutTests
{
    [Fact]
    public void PartsKeepTheirDistancesLanesAndThePlinthsEdge() =>
        Check.One(
            PropertySeed.Runs(60),
            Prop.ForAll(
                PrintableSpecs.Any.Select(s => s with { Process = null }).ToArbitrary(),
                spec =>
                {
                    ObjectLayout layout = new ObjectPlan(spec).Layout;
                    var edge = Rect.Centred(2 * (layout.HalfX - 1.2), 2 * (layout.HalfY - 1.2));
                    for (int i = 0; i < layout.Parts.Count; i++)
                    {
                        Placement part = layout.Parts[i];
                        if (!part.Placed.AtEdge)
                            Assert.Equal(edge.Join(part.Placed.Bounds), edge);
                        for (int j = 0; j < i; j++)
                            RequireApart(part, layout.Parts[j]);
                    }
                }
            )
        );

    [Fact]
    public void TheSameSpecGivesTheSamePlaces()
    {
        ObjectLayout first = new ObjectPlan(new TestObjectSpec()).Layout,
            second = new ObjectPlan(new TestObjectSpec()).Layout;
        Assert.Equal(
            first.Parts.Select(p => (p.Part.Name, p.X, p.Y)),
            second.Parts.Select(p => (p.Part.Name, p.X, p.Y))
        );
    }

    [Fact]
    public void TheStandardPlinthIsNoLargerThanItsRulesAskFor()
    {
        ObjectLayout standard = new ObjectPlan(new TestObjectSpec()).Layout;
        Assert.InRange(4 * standard.HalfX * standard.HalfY, 1000, 62 * 46);
        ObjectLayout witness = new ObjectPlan(Presets.Witness).Layout;
        Assert.InRange(4 * witness.HalfX * witness.HalfY, 250, 29 * 20.8);
    }

    private static void RequireApart(Placement a, Placement b)
    {
        if (a.Placed.Height == PartHeight.Flat || b.Placed.Height == PartHeight.Flat)
            return;
        double least =
            a.Placed.Height == PartHeight.Low || b.Placed.Height == PartHeight.Low ? 0.75
            : a.Placed.AtEdge || b.Placed.AtEdge ? 0.95
            : 1.45;
        Assert.All(
            a.Placed.Solids,
            s => Assert.All(b.Placed.Solids, t => Assert.InRange(s.DistanceTo(t), least, double.MaxValue))
        );
        RequireFree(a, b);
        RequireFree(b, a);
    }

    /// <summary>
    /// A caliper jaw is 3 mm deep and wide; a label stays 6 mm away from where it goes, and may stand where light goes
    /// over it.
    /// </summary>
    private static void RequireFree(Placement owner, Placement other) =>
        Assert.All(
            owner.Placed.Lanes.Where(l => l.Kind == LaneKind.Caliper || other.Placed.Height == PartHeight.Tall),
            lane =>
                Assert.All(
                    other.Placed.Solids,
                    s =>
                        Assert.InRange(
                            lane.Room.Grow(-0.1).DistanceTo(s),
                            other.Placed.Height == PartHeight.Low ? 6 : 1e-9,
                            double.MaxValue
                        )
                )
        );
}
