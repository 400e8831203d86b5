using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.Bridge;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.TestObjects;

/// <summary>The bridge, told by the triangles of the finished mesh alone.</summary>
public class BridgeTests
{
    private const double Opening = 5.0,
        JawWidth = 3.0,
        JawLength = 40;

    // A line through an edge passes two triangles.
    private const double Aside = 1e-4;

    public static Arbitrary<TestObjectSpec> WithBridge =>
        PrintableSpecs
            .Any.SelectMany(spec =>
                Gen.Choose(10, 50)
                    .Select(t =>
                        spec with
                        {
                            Tilt = new TiltSpec(),
                            Bridge = new BridgeSpec { Thickness = t / 10.0 },
                        }
                    )
            )
            .ToArbitrary();

    [Property(MaxTest = 25)]
    public Property TheBeamIsAsThickAsAskedOverAnOpeningThatAJawGoesInto() =>
        OfEach(
            (spec, rays, lines) =>
            {
                Assert.Equal(3, lines.Length);
                foreach (Vector3D under in lines.Select(l => l.From.Point))
                {
                    double[] topDown = [.. rays.Heights(under.X + Aside, under.Y + Aside).OrderDescending().Take(3)];
                    Assert.Equal(spec.Bridge!.Thickness, topDown[0] - topDown[1], 3e-4);
                    Assert.Equal(Opening, topDown[1] - topDown[2], 3e-4);
                }
            }
        );

    /// <summary>
    /// Nothing stands where the jaws go, from the front of the bridge as far as they are long: over the lower one's
    /// room no upright line meets anything above the plinth but what labels raise.
    /// </summary>
    [Property(MaxTest = 25)]
    public Property TheRoomOfTheJawsInFrontIsFree() =>
        OfEach(
            (spec, rays, lines) =>
            {
                Vector3D middle = lines[1].From.Point,
                    along = lines[2].From.Point - lines[0].From.Point;
                along *= 1 / along.Length;
                // Turned clockwise from along the beam: the front of its frame.
                var front = new Vector3D(along.Y, -along.X, 0);
                double labels = spec.Plinth.Thickness + (spec.Labels?.Height ?? 0) + 0.5;
                for (double away = 1.7; away < JawLength; away += 0.9)
                for (double side = -JawWidth / 2 + 0.2; side < JawWidth / 2; side += 0.65)
                {
                    Vector3D p = middle + front * away + along * side;
                    Assert.True(rays.Highest(p.X + Aside, p.Y + Aside) < labels, $"{spec}: something at {p}");
                }
            }
        );

    private static Property OfEach(Action<TestObjectSpec, LaneRays, GaugeLine[]> check) =>
        Prop.ForAll(
            WithBridge,
            spec =>
            {
                TestObject made = TestObject.Of(spec);
                if (made.Solid is not null)
                    check(
                        spec,
                        new LaneRays(made.ToMesh()),
                        [.. made.Gauges.Where(g => g.Feature == KnownFeatures.BridgeThickness)]
                    );
            }
        );
}
