using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

/// <summary>The room of a caliper's jaws beside faces that stay on the plinth, probed on the object's mesh.</summary>
public class CaliperLaneTests
{
    /// <summary>How far a jaw reaches beyond the face it touches, and how wide it is: docs/test-object.md.</summary>
    private const double Reach = 4.0,
        Width = 3.0;

    /// <summary>What rounding positions to pixels may take from a lane.</summary>
    private const double Play = 0.2;

    public static TheoryData<string> Names => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void JawsReachTheAttachedFacesOfAPreset(string name) =>
        Assert.NotEqual(0, Probed(TestObject.Of(Presets.Find(name)!.Spec)));

    /// <summary>The table, which stands alone at the bench, says the same of loose boxes as the boxes do.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void TheTableKnowsWhichBoxesAreLoose(string name)
    {
        TestObject made = TestObject.Of(Presets.Find(name)!.Spec);
        Assert.Equal(
            made.Boxes.Where(b => !b.Attached).Select(b => b.Number),
            made.Features.Where(made.Features.IsLoose).Select(f => f.Id.Number!.Value).Distinct()
        );
    }

    [Fact]
    public void JawsReachTheAttachedFacesOfAnyObject()
    {
        int probed = 0;
        Check.One(
            PropertySeed.Runs(100),
            Prop.ForAll(
                PrintableSpecs
                    .Any.Select(s => s with { Tilt = new TiltSpec() })
                    .Where(s => s.Nest is not null || s.Spans is not null)
                    .ToArbitrary(),
                spec =>
                {
                    TestObject made = TestObject.Of(spec);
                    if (!made.HasErrors)
                        probed += Probed(made);
                }
            )
        );
        Assert.True(probed > 50, $"only {probed} faces were probed");
    }

    /// <summary>Nothing but the plinth is where a jaw goes; returns how many faces were probed.</summary>
    private static int Probed(TestObject made)
    {
        var rays = new LaneRays(made.ToMesh());
        int count = 0;
        foreach (GaugeLine line in Middles(made))
        foreach (GaugeFace face in new[] { line.From, line.To })
        {
            count++;
            for (double away = Play; away < Reach - Play; away += 0.45)
            for (double side = Play - Width / 2; side < Width / 2 - Play; side += 0.4)
            {
                double x = face.Point.X + face.Outward.X * away - face.Outward.Y * side,
                    y = face.Point.Y + face.Outward.Y * away + face.Outward.X * side;
                double top = rays.Highest(x, y);
                Assert.True(
                    top <= made.Spec.Plinth.Thickness + 0.01,
                    $"{line.Feature}: something {top:0.00} mm high at {x:0.0}, {y:0.0}; {SpecJson.ToText(made.Spec)}"
                );
            }
        }
        return count;
    }

    /// <summary>Faces are touched in their middle: of several lines of a size the one between the others.</summary>
    private static IEnumerable<GaugeLine> Middles(TestObject made) =>
        made
            .Gauges.Where(g => IsAttached(g.Feature, made))
            .GroupBy(g => g.Feature)
            .Select(lines =>
            {
                Vector3D mean = lines.Aggregate(default(Vector3D), (sum, l) => sum + Middle(l)) * (1.0 / lines.Count());
                return lines.MinBy(l => (Middle(l) - mean).Length)!;
            });

    private static Vector3D Middle(GaugeLine line) => (line.From.Point + line.To.Point) * 0.5;

    /// <summary>Loose boxes are measured in the hand; the largest box and the posts of the spans stay.</summary>
    private static bool IsAttached(string feature, TestObject made) =>
        feature is "span.x" or "span.y"
        || made.Boxes.Count > 0
            && feature.StartsWith($"box{made.Boxes.Max(b => b.Number)}.outside.", StringComparison.Ordinal);
}
