using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Straight lines of light through every tunnel and slot, held against the object's mesh.</summary>
public class SightLaneTests
{
    private const int Lines = 200;

    public static TheoryData<string> Names => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void LightIsSeenThroughEveryTunnelOfAPreset(string name) =>
        RequireSeen(TestObjectBuilder.Build(Presets.Find(name)!.Spec));

    [Fact]
    public void LightIsSeenThroughEveryTunnelOfAnyObject() =>
        Check.One(
            PropertySeed.Runs(100),
            Prop.ForAll(
                PrintableSpecs
                    .Any.Select(s => s with { Labels = null, Title = "", Tilt = new TiltSpec() })
                    .Where(s => s.Slots is not null || s.Squeeze is not null)
                    .ToArbitrary(),
                spec =>
                {
                    TestObject made = TestObjectBuilder.Build(spec);
                    if (!made.HasErrors)
                        RequireSeen(made);
                }
            )
        );

    /// <summary>At least 30 % of the straight lines that go through a tunnel meet nothing else.</summary>
    private static void RequireSeen(TestObject made)
    {
        TriangleMesh mesh = made.ToMesh();
        foreach (GaugeLine line in made.Gauges.Where(g => g.IsGap && g.Direction.Z == 1))
        {
            (Vector3D along, double depth, double width) = Opening(line.Feature, made);
            int free = FreeLines(mesh, line, along, depth, width);
            Assert.True(
                free >= 0.3 * Lines,
                $"{line.Feature}: {free} of {Lines} lines pass; {SpecJson.ToText(made.Spec)}"
            );
        }
    }

    /// <summary>Where a tunnel leads, how long and how wide it is: docs/test-object.md.</summary>
    private static (Vector3D Along, double Depth, double Width) Opening(string feature, TestObject made)
    {
        bool tab = feature.StartsWith("squeeze", StringComparison.Ordinal);
        (ITestPart _, PartPlace place) = made.Plan.Parts.Single(p => p.Part.Name == (tab ? "squeeze" : "slots"));
        return tab ? (place.Direction(1, 0), 2.0, 2.0) : (place.Direction(0, 1), 1.5, 1.5);
    }

    private static int FreeLines(TriangleMesh mesh, GaugeLine line, Vector3D along, double depth, double width)
    {
        var random = new Random(7);
        Vector3D middle = (line.From.Point + line.To.Point) * 0.5,
            across = Vector3D.Cross(along, new Vector3D(0, 0, 1));
        // Off the faces by a grid unit or two: the tunnel's own walls do not count.
        double height = line.Length() - 4.0 / Grid.UnitsPerMillimetre,
            wide = width - 4.0 / Grid.UnitsPerMillimetre;
        Vector3D Point(double end) =>
            middle
            + along * end
            + across * ((random.NextDouble() - 0.5) * wide)
            + new Vector3D(0, 0, (random.NextDouble() - 0.5) * height);
        int free = 0;
        for (int i = 0; i < Lines; i++)
        {
            Vector3D a = Point(-depth / 2),
                b = Point(depth / 2);
            if (!Hits(mesh, a, b - a))
                free++;
        }
        return free;
    }

    /// <summary>Whether a line, endless on both sides, passes a triangle (after Moeller and Trumbore 1997).</summary>
    private static bool Hits(TriangleMesh mesh, Vector3D from, Vector3D along)
    {
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            Vector3D e1 = b - a,
                e2 = c - a,
                p = Vector3D.Cross(along, e2);
            double determinant = Vector3D.Dot(e1, p);
            if (determinant == 0)
                continue;
            Vector3D s = from - a;
            double u = Vector3D.Dot(s, p) / determinant;
            if (u is < 0 or > 1)
                continue;
            double v = Vector3D.Dot(along, Vector3D.Cross(s, e1)) / determinant;
            if (v >= 0 && u + v <= 1)
                return true;
        }
        return false;
    }
}
