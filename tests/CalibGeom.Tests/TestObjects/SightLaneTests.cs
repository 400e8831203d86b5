using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.PinRow;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Parts.SlotComb;
using CalibGeom.TestObjects.Parts.Spans;
using CalibGeom.TestObjects.Parts.SqueezeTab;
using CalibGeom.TestObjects.Parts.WallFan;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Straight lines of light through every tunnel and slot, held against the object's mesh.</summary>
public class SightLaneTests
{
    public static TheoryData<string> Names => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void LightIsSeenThroughEveryTunnelOfAPreset(string name) =>
        RequireSeen(TestObject.Of(Presets.Find(name)!.Spec));

    [Fact]
    public void LightIsSeenThroughEveryTunnelOfAnyObject()
    {
        int seen = 0,
            narrow = 0;
        Check.One(
            PropertySeed.Runs(100),
            Prop.ForAll(
                PrintableSpecs
                    .Any.Select(s => s with { Labels = null, Title = "", Tilt = new TiltSpec() })
                    .Where(s => s.Slots is not null || s.Squeeze is not null)
                    .ToArbitrary(),
                spec =>
                {
                    TestObject made = TestObject.Of(spec);
                    if (made.Findings.Any(f => f.Rule == "sight-lane-narrow"))
                        narrow++;
                    if (made.HasErrors)
                        return;
                    seen++;
                    RequireSeen(made);
                }
            )
        );
        Assert.True(seen >= 70 && narrow <= 0, $"{seen} seen, {narrow} without a free lane");
    }

    /// <summary>Here the comb once stood in the middle of a wide plinth, between a box and the spans.</summary>
    [Fact]
    public void LightIsSeenThroughACombThatHasMuchRoomAroundIt()
    {
        TestObject made = TestObject.Of(WideObject);
        Assert.False(made.HasErrors);
        RequireSeen(made);
    }

    /// <summary>
    /// A wall behind an opening, so high that 21 or 20 of the 64 pairs of heights lead over it: 0.328 and 0.3125 lie
    /// on both sides of the least share, 0.32. A line through heights a and b at the opening's mouths, at x -1 and 1,
    /// has a + t (b - a) on the way over the wall from 2.2 to 2.4, t being 1.6 to 1.7.
    /// </summary>
    [Theory]
    [InlineData(21, false)]
    [InlineData(20, true)]
    public void AnOpeningIsNarrowJustBelowTheLeastShare(int free, bool narrow)
    {
        double[] least =
        [
            .. from a in Enumerable.Range(0, 8)
            from b in Enumerable.Range(0, 8)
            let rise = (b - a) / 8.0
            let z = (a + 0.5) / 8 + Math.Min(1.6 * rise, 1.7 * rise)
            orderby z descending
            select z,
        ];
        Assert.True(least[free - 1] - least[free] > 0.001);
        double wall = Gate.Floor + (least[free - 1] + least[free]) / 2;
        TestObject open = With(new Screen(null, 0));
        PartPlace gate = open.Plan.Of<Gate>().Single().Place;
        TestObject made = With(new Screen(gate.Rectangle(2.2, -6, 2.4, 2), wall));
        Assert.Equal(gate, made.Plan.Of<Gate>().Single().Place with { Spec = gate.Spec });
        Assert.DoesNotContain(open.Findings, f => f.Rule == "sight-lane-narrow");
        Finding[] found = [.. made.Findings.Where(f => f.Rule == "sight-lane-narrow")];
        Assert.Equal(narrow, found.Length == 1);
        if (narrow)
        {
            Assert.Equal((free / 64.0, "gate"), (found[0].Value!.Value, found[0].Subject));
            Assert.Equal(
                "The share of straight lines through opening 1 that meet nothing else is 0.313; the limit is "
                    + FormattableString.Invariant($"{SightLines.LeastShare}."),
                found[0].Message
            );
            Assert.StartsWith("Leave a part out", found[0].Remedy, StringComparison.Ordinal);
        }
    }

    private static TestObject With(Screen screen) =>
        TestObject.Of(
            new TestObjectSpec
            {
                Nest = null,
                Spans = null,
                Columns = null,
                Slots = null,
                Squeeze = null,
                Labels = null,
                OwnParts = [new Gate(), screen],
            }
        );

    /// <summary>A block at the plinth's edge with an opening 1 mm high along it.</summary>
    private sealed class Gate : ITestPart
    {
        internal const double Floor = 12;

        public string Name => "gate";

        public PartFootprint Footprint =>
            new([new Rect(-2, -4, 2, 0)], [])
            {
                AtEdge = true,
                Openings = [new Opening(new Rect(-1, -3, 1, -1), true, Floor, Floor + 1)],
            };

        public IEnumerable<PartBody> Bodies(PartPlace place) =>
            [new("gate", [Loft.Prism(place.Rectangle(-2, -4, 2, -1), place.BaseZ, place.BaseZ + 3)])];
    }

    /// <summary>A wall that stands where the layout knows nothing of, so that it does not avoid it.</summary>
    private sealed class Screen(Outline? wall, double top) : ITestPart
    {
        public string Name => "screen";

        public PartFootprint Footprint => new([Rect.Centred(4, 4)], []);

        public IEnumerable<PartBody> Bodies(PartPlace place) =>
            wall is null ? [] : [new("screen", [Loft.Prism(wall, place.BaseZ, top)])];
    }

    private static TestObjectSpec WideObject =>
        new()
        {
            Process = new ProcessSpec
            {
                PixelPitch = new PerAxis(0.05688359999999999, 0.04858208),
                LayerHeight = 0.027242,
                Plate = new PlateSize(150, 90, 160),
                BaseLayers = 4,
                Snap = PixelSnap.Pixels,
            },
            Plinth = new PlinthSpec { Thickness = 2.5647325, EdgeChamfer = 0.3559284 },
            Nest = new NestSpec
            {
                Sizes = [7.6605096],
                Clearances = [],
                Wall = 0.9187004,
                GaugeBand = 6.255589,
                PocketDepth = 7.769665,
            },
            Spans = new SpansSpec { X = 44.129118, Y = 40.628172 },
            Columns = new ColumnsSpec
            {
                Diameters = [0.6048632, 0.69614579715324],
                Copies = 2,
                Height = 3.4549595,
                HeadDiameter = 0.610739,
                Pitch = 4.395385,
                Azimuth = 111.55248,
            },
            Slots = new SlotsSpec { Heights = [0.23530412, 0.39028132, 0.46222559, 0.59166879, 0.75610751] },
            Squeeze = new SqueezeSpec { Heights = [0.11189218, 0.25152297], Bar = 0.5838665 },
            Pins = new PinSpec { Diameters = [1.483826], Height = 6.919253 },
            Walls = new WallSpec
            {
                Thicknesses = [0.27219296],
                Height = 5.471476,
                Length = 5,
            },
            Labels = null,
        };

    /// <summary>At least 30 % of the straight lines that go through a tunnel meet nothing else.</summary>
    private static void RequireSeen(TestObject made)
    {
        var rays = new LaneRays(made.ToMesh());
        foreach (GaugeLine line in made.Gauges.Where(g => g.IsGap && g.Direction.Z == 1))
        {
            (Vector3D along, double depth, double width) = Opening(line.Feature, made);
            double share = rays.FreeThrough(line, along, depth, width);
            Assert.True(share >= 0.3, $"{line.Feature}: {share:0.000} of the lines pass; {SpecJson.ToText(made.Spec)}");
        }
    }

    /// <summary>Where a tunnel leads, how long and how wide it is: docs/test-object.md.</summary>
    private static (Vector3D Along, double Depth, double Width) Opening(string feature, TestObject made)
    {
        bool tab = feature.StartsWith("squeeze", StringComparison.Ordinal);
        (ITestPart _, PartPlace place) = made.Plan.Parts.Single(p => p.Part.Name == (tab ? "squeeze" : "slots"));
        return tab ? (place.Direction(1, 0), 2.0, 2.0) : (place.Direction(0, 1), 1.5, 1.5);
    }
}
