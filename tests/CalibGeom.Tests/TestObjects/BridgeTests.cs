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
        Prop.ForAll(
            WithBridge,
            spec =>
            {
                TestObject made = TestObject.Of(spec);
                if (made.Solid is null)
                    return;
                TriangleMesh mesh = made.ToMesh();
                GaugeLine[] lines = [.. made.Gauges.Where(g => g.Feature == KnownFeatures.BridgeThickness)];
                Assert.Equal(3, lines.Length);
                foreach (GaugeLine line in lines)
                {
                    double[] levels = Levels(mesh, line.From.Point.X + 1e-4, line.From.Point.Y + 1e-4);
                    double[] topDown = [.. levels.OrderDescending().Take(3)];
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
        Prop.ForAll(
            WithBridge,
            spec =>
            {
                TestObject made = TestObject.Of(spec);
                if (made.Solid is null)
                    return;
                TriangleMesh mesh = made.ToMesh();
                GaugeLine[] lines = [.. made.Gauges.Where(g => g.Feature == KnownFeatures.BridgeThickness)];
                Vector3D middle = lines[1].From.Point,
                    along = lines[2].From.Point - lines[0].From.Point;
                along *= 1 / along.Length;
                // Turned clockwise from along the beam: the front of its frame.
                var front = new Vector3D(along.Y, -along.X, 0);
                double labels = spec.Plinth.Thickness + (spec.Labels?.Height ?? 0) + 0.5;
                for (double away = 1.7; away < JawLength; away += 0.9)
                for (double aside = -JawWidth / 2 + 0.2; aside < JawWidth / 2; aside += 0.65)
                {
                    Vector3D p = middle + front * away + along * aside;
                    double[] levels = Levels(mesh, p.X + 1e-4, p.Y + 1e-4);
                    Assert.True(levels.Length == 0 || levels.Max() < labels, $"{spec}: something at {p}");
                }
            }
        );

    /// <summary>The heights at which an upright line passes through the mesh.</summary>
    private static double[] Levels(TriangleMesh mesh, double x, double y)
    {
        var found = new List<double>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            Vector3D a = mesh.Vertex(mesh.Triangles[3 * t]),
                b = mesh.Vertex(mesh.Triangles[3 * t + 1]),
                c = mesh.Vertex(mesh.Triangles[3 * t + 2]);
            double area = (b.X - a.X) * (c.Y - a.Y) - (c.X - a.X) * (b.Y - a.Y);
            if (area == 0)
                continue;
            double v = ((x - a.X) * (c.Y - a.Y) - (c.X - a.X) * (y - a.Y)) / area,
                w = ((b.X - a.X) * (y - a.Y) - (x - a.X) * (b.Y - a.Y)) / area;
            if (v >= 0 && w >= 0 && v + w <= 1)
                found.Add(a.Z + v * (b.Z - a.Z) + w * (c.Z - a.Z));
        }
        return [.. found];
    }
}
