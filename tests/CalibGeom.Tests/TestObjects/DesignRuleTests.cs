using System.Globalization;
using System.Text;
using CalibGeom.Meshes;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.SlotComb;
using CalibGeom.TestObjects.Parts.SqueezeTab;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

public class DesignRuleTests
{
    private static readonly TestObjectSpec Standard = new();
    private static readonly NestSpec Boxes = new();
    private static readonly ColumnsSpec Round = new();
    private static readonly ProcessSpec Printer = new() { PixelPitch = 0.035 };

    public static TheoryData<string, Severity, string, TestObjectSpec> Broken =>
        new()
        {
            { "wall-too-thin", Severity.Error, "box1", Standard with { Nest = Boxes with { Wall = 0.4 } } },
            { "wall-too-thin", Severity.Warning, "box1", Standard with { Nest = Boxes with { Wall = 0.7 } } },
            {
                "wall-too-thin",
                Severity.Error,
                "squeeze.bar",
                Standard with
                {
                    Squeeze = new SqueezeSpec { Bar = 0.14 },
                }
            },
            {
                "sizes-not-ascending",
                Severity.Error,
                "nest.sizes",
                Standard with
                {
                    Nest = Boxes with { Sizes = [11.2, 8, 16] },
                }
            },
            {
                "sizes-not-ascending",
                Severity.Error,
                "columns.diameters",
                Standard with
                {
                    Columns = Round with { Diameters = [0.5, 0.5] },
                }
            },
            {
                "sizes-not-ascending",
                Severity.Error,
                "slots.heights",
                Standard with
                {
                    Slots = new SlotsSpec { Heights = [0.4, 0.2] },
                }
            },
            {
                "box-without-pocket",
                Severity.Note,
                "box1",
                Standard with
                {
                    Nest = new NestSpec { Sizes = [4, 8], Wall = 0.5 },
                }
            },
            {
                "gauge-band-too-high",
                Severity.Error,
                "nest.gaugeBand",
                Standard with
                {
                    Nest = Boxes with { GaugeBand = 7.6 },
                }
            },
            {
                "gauge-band-too-low",
                Severity.Error,
                "nest.gaugeBand",
                Standard with
                {
                    Nest = Boxes with { GaugeBand = 1.5 },
                }
            },
            {
                "bands-do-not-meet",
                Severity.Error,
                "joint1.fit",
                Standard with
                {
                    Nest = new NestSpec { Sizes = [20, 22] },
                }
            },
            {
                "clearance-says-nothing",
                Severity.Warning,
                "joint2.fit",
                Standard with
                {
                    Nest = Boxes with { Clearances = [0.05, 0.01] },
                }
            },
            { "neck-bending", Severity.Warning, "box1", Standard with { Nest = new NestSpec { Sizes = [31.5, 45] } } },
            { "neck-tension", Severity.Warning, "box1", Standard with { Nest = new NestSpec { Sizes = [40, 56] } } },
            { "column-room", Severity.Error, "columns.pitch", Standard with { Columns = Round with { Pitch = 2 } } },
            {
                "column-room",
                Severity.Error,
                "columns.pitch",
                Standard with
                {
                    Columns = Round with { Pitch = 2.8, Lean = 60 },
                }
            },
            {
                "column-load",
                Severity.Warning,
                "columns.headDiameter",
                Standard with
                {
                    Columns = Round with { HeadDiameter = 2.5 },
                }
            },
            {
                "column-slender",
                Severity.Warning,
                "columns.height",
                Standard with
                {
                    Columns = Round with { Height = 12 },
                }
            },
            { "overhang", Severity.Error, "box1", Standard with { Tilt = new TiltSpec { Angle = 24 } } },
            {
                "overhang",
                Severity.Error,
                "column1",
                Standard with
                {
                    Tilt = new TiltSpec { Axis = TiltAxis.Y, Angle = -18 },
                    Columns = Round with { Diameters = [0.5] },
                }
            },
            { "bridge", Severity.Note, "squeeze", Standard },
            {
                "tilt-without-squeeze",
                Severity.Note,
                "squeeze.open",
                Standard with
                {
                    Tilt = new TiltSpec { Angle = 5 },
                }
            },
            {
                "tilt-without-bridge",
                Severity.Note,
                "bridge.thickness",
                Presets.Witness with
                {
                    Tilt = new TiltSpec { Angle = 5 },
                }
            },
            { "bridge", Severity.Note, "bridge", Presets.Witness },
            {
                "bridge-near-plate",
                Severity.Warning,
                "bridge.thickness",
                Presets.Witness with
                {
                    Process = Printer with { LayerHeight = 0.1, BaseLayers = 60 },
                }
            },
            {
                "tilt-without-thickness",
                Severity.Note,
                "plinth.thickness",
                Standard with
                {
                    Tilt = new TiltSpec { Angle = 5 },
                }
            },
            {
                "tilt-without-snap",
                Severity.Note,
                "process.snap",
                Standard with
                {
                    Tilt = new TiltSpec { Angle = 5 },
                    Process = Printer,
                }
            },
            {
                "gap-too-narrow",
                Severity.Error,
                "slots.heights",
                Standard with
                {
                    Slots = new SlotsSpec { Heights = [0.04, 0.2] },
                }
            },
            {
                "gap-too-narrow",
                Severity.Warning,
                "squeeze.heights",
                Standard with
                {
                    Squeeze = new SqueezeSpec { Heights = [0.08, 0.2] },
                }
            },
            {
                "label-stroke",
                Severity.Error,
                "labels.stroke",
                Standard with
                {
                    Labels = new LabelsSpec { Stroke = 0.15 },
                }
            },
            {
                "label-stroke",
                Severity.Warning,
                "labels.stroke",
                Standard with
                {
                    Process = Printer with { PixelPitch = 0.11 },
                }
            },
            {
                "label-height",
                Severity.Warning,
                "labels.height",
                Standard with
                {
                    Labels = new LabelsSpec { Height = 0.15 },
                }
            },
            {
                "larger-than-plate",
                Severity.Error,
                "process.plate",
                Standard with
                {
                    Process = Printer with { Plate = new PlateSize(40, 90, 160) },
                }
            },
            {
                "larger-than-plate",
                Severity.Error,
                "process.plate",
                Standard with
                {
                    Process = Printer with { Plate = new PlateSize(150, 90, 15) },
                }
            },
            {
                "base-layers-thick",
                Severity.Warning,
                "process.baseLayers",
                Standard with
                {
                    Process = Printer with { BaseLayers = 25 },
                }
            },
            {
                "slots-near-plate",
                Severity.Warning,
                "slots.open",
                Standard with
                {
                    Process = Printer with { BaseLayers = 75 },
                }
            },
            { "pixels", Severity.Note, "box1.outside.x", Standard with { Process = Printer } },
            {
                "clearance-lost-to-pixels",
                Severity.Warning,
                "joint1.fit",
                Standard with
                {
                    Process = Printer with { PixelPitch = 0.11, Snap = PixelSnap.None },
                }
            },
            {
                "column-pixels",
                Severity.Warning,
                "columns.diameters",
                Standard with
                {
                    Process = Printer with { PixelPitch = 0.09 },
                }
            },
            { "layers", Severity.Note, "plinth.thickness", Standard with { Process = Printer } },
            { "layers", Severity.Note, "slots.heights", Standard with { Process = Printer } },
            {
                "pixels",
                Severity.Note,
                "box1.outside.y",
                Standard with
                {
                    Process = Printer with { PixelPitch = new PerAxis(0.05, 0.03) },
                }
            },
            {
                "pixels",
                Severity.Note,
                "box1.outside.x",
                Standard with
                {
                    Process = Printer with { PixelPitch = new PerAxis(0.05, 0.03) },
                }
            },
            {
                "pixels",
                Severity.Note,
                "box1.outside.x",
                Standard with
                {
                    Process = Printer with { Snap = PixelSnap.None },
                }
            },
            {
                "larger-than-plate",
                Severity.Error,
                "process.plate",
                Standard with
                {
                    Process = Printer with { Plate = new PlateSize(150, 20, 160) },
                }
            },
            {
                "lower-than-a-layer",
                Severity.Warning,
                "slots.heights",
                Standard with
                {
                    Process = Printer with { LayerHeight = 0.2 },
                }
            },
        };

    [Theory]
    [MemberData(nameof(Broken))]
    public void ARuleNamesWhatIsWrongWhereAndWhatToDo(
        string rule,
        Severity severity,
        string subject,
        TestObjectSpec spec
    )
    {
        Finding? finding = TestObject
            .Of(spec)
            .Findings.FirstOrDefault(f => f.Rule == rule && f.Subject == subject && f.Severity == severity);
        Assert.NotNull(finding);
        Assert.NotEmpty(finding.Message);
        if (severity == Severity.Note)
            return;
        Assert.NotNull(finding.Value);
        Assert.NotNull(finding.Limit);
        Assert.NotEmpty(finding.Remedy);
    }

    /// <summary>What every rule says, word for word, as a person would read it over: unit, message, remedy.</summary>
    [Fact]
    public void TheWordsOfEveryRule()
    {
        var said = new StringBuilder();
        foreach ((string rule, Severity severity, string subject, TestObjectSpec spec) in Rows(Broken))
        {
            Finding f = TestObject
                .Of(spec)
                .Findings.First(f => f.Rule == rule && f.Subject == subject && f.Severity == severity);
            said.Append(
                CultureInfo.InvariantCulture,
                $"{rule} {subject} [{f.Value:0.###} {f.Unit}]\n  {f.Message}\n  {f.Remedy}\n"
            );
        }
        RepositoryFile.RequireHolds(
            "tests/CalibGeom.Tests/TestObjects/rule-words.txt",
            Encoding.UTF8.GetBytes(said.ToString())
        );
    }

    private static IEnumerable<(string, Severity, string, TestObjectSpec)> Rows(
        TheoryData<string, Severity, string, TestObjectSpec> data
    ) => data.Select(row => ((string)row[0], (Severity)row[1], (string)row[2], (TestObjectSpec)row[3]));

    [Fact]
    public void WhatLiesOnALimitIsNotBeyondItAndErrorsComeFirst()
    {
        TestObjectSpec spec = SpecJson.With(Standard, ["slots.heights=0.05,0.4", "process.plate=40,90,160"]);
        IReadOnlyList<Finding> findings = TestObject.Of(spec).Findings;
        Assert.Equal(Severity.Warning, findings.First(f => f.Rule == "gap-too-narrow").Severity);
        Assert.Equal(findings.Select(f => f.Severity).OrderDescending(), findings.Select(f => f.Severity));
        Assert.Equal(3, findings.Select(f => f.Severity).Distinct().Count());
    }

    /// <summary>0.3 / 0.1 is a little less than three, and still three pixels.</summary>
    [Fact]
    public void PixelsThatAreWholeToRoundingAreWhole()
    {
        Assert.True(0.3 / 0.1 < 3);
        Assert.Equal("3", PixelCount.Of(0.3, 0.1).ToString());
        Assert.Equal("3 or 4", PixelCount.Of(0.35, 0.1).ToString());
    }

    /// <summary>The size is that of outlines before they are put on the grid: micrometres about the mesh.</summary>
    [Theory]
    [InlineData(0.02, false)]
    [InlineData(-0.02, true)]
    public void AnObjectMayBeAsLargeAsThePlate(double more, bool found)
    {
        Vector3D size = TestObject.Of(Standard).Solid!.ToMesh().Bounds.Size;
        TestObject made = TestObject.Of(
            Standard with
            {
                Process = new ProcessSpec { Plate = new PlateSize(size.X + more, size.Y + more, size.Z + more) },
            }
        );
        Assert.Equal(found ? 3 : 0, made.Findings.Count(f => f is { Rule: "larger-than-plate", Unit: "mm" }));
    }

    public static TheoryData<string, bool> EveryPreset => Cases();

    private static TheoryData<string, bool> Cases()
    {
        var cases = new TheoryData<string, bool>();
        foreach (Preset preset in Presets.All)
        {
            cases.Add(preset.Name, false);
            cases.Add(preset.Name, true);
        }
        return cases;
    }

    [Theory]
    [MemberData(nameof(EveryPreset))]
    public void APresetKeepsToAllRulesWithAndWithoutAProcess(string name, bool process)
    {
        TestObjectSpec spec = Presets.Find(name)!.Spec;
        if (process)
            spec = spec with
            {
                Process = new ProcessSpec { PixelPitch = 0.035, LayerHeight = name == "coarse" ? 0.1 : 0.05 },
            };
        Assert.DoesNotContain(TestObject.Of(spec).Findings, f => f.Severity != Severity.Note);
    }

    [Fact]
    public void AnUnknownPhaseGivesBothPixelCountsAndTheRangeOfClearance()
    {
        TestObject made = TestObject.Of(
            Standard with
            {
                Process = Printer with { PixelPitch = 0.035, Snap = PixelSnap.None },
            }
        );
        // 8 mm is 228.6 pixels of 0.035 mm and 8.1 mm is 231.4: 2 to 4 pixels of gap, half of them on each side.
        Finding width = made.Findings.Single(f => f.Rule == "pixels" && f.Subject == "box1.outside.x");
        Assert.Contains("228 or 229 pixels, which give 7.98 or 8.015 mm", width.Message, StringComparison.Ordinal);
        Finding clearance = made.Findings.First(f => f.Rule == "pixel-clearance" && f.Subject == "joint1.fit");
        Assert.Equal(0.035, clearance.Value!.Value, 12);
        Assert.Equal(0.07, clearance.Limit!.Value, 12);
    }

    [Fact]
    public void WidthsSnapToWholePixelsAndAClearanceToTheNearestNumberOfThem()
    {
        TestObject made = TestObject.Of(Standard with { Process = Printer });
        Assert.Equal(229 * 0.035, made.Boxes[0].Outside.X, 12);
        Assert.Equal(3 * 0.035 / 2, made.Joints[0].Clearance.X, 12);
        Assert.Equal(8.0, made.Boxes[0].WantedOutside);
        Assert.Equal(0.05, made.Joints[0].WantedClearance.X);
        Assert.All(made.Columns, c => Assert.Equal(Math.Round(c.X / 0.035) * 0.035, c.X, 1e-4));
        Assert.Equal(1143 * 0.035, made.Features.Find("span.x")!.Nominal, 12);
    }

    [Fact]
    public void ABlockedLaneAndALabelNearOneAreFound()
    {
        Placement owner = BesideALane("box3", LaneKind.Caliper),
            inTheWay = Square("columns", PartHeight.Tall).MoveTo(10, 2),
            label = Square("label.title", PartHeight.Low).MoveTo(15, 0);
        Finding[] found = [.. LaneRule.Check([owner, inTheWay, label])];
        Assert.Equal(["caliper-lane-blocked", "label-near-lane"], found.Select(f => f.Rule));
        Assert.Equal(
            "columns stands where a caliper jaw goes beside box3. Leave a part out, or make it smaller.",
            $"{found[0].Message} {found[0].Remedy}"
        );
        // The label's edge at 14 mm, the lane's at 11.2 less the play of 0.15.
        Assert.StartsWith(
            "The distance of label.title from the jaw beside box3 is 2.95 mm; the limit is 6 mm",
            found[1].Message,
            StringComparison.Ordinal
        );
        Assert.Equal((2.95, "Shorten the label."), (Math.Round(found[1].Value!.Value, 9), found[1].Remedy));
        Assert.Empty(LaneRule.Check([owner, inTheWay.MoveTo(10, 4)]));
    }

    [Fact]
    public void WhatStandsInFrontOfAnOpeningIsFoundAndALabelIsNot()
    {
        Placement owner = BesideALane("slots", LaneKind.Open),
            tall = Square("columns", PartHeight.Tall).MoveTo(10, 2),
            label = Square("label.title", PartHeight.Low).MoveTo(10, 0);
        Finding found = Assert.Single(LaneRule.Check([owner, tall, label]));
        Assert.Equal(("open-lane-blocked", "slots", Severity.Error), (found.Rule, found.Subject, found.Severity));
        Assert.Equal(
            "columns stands in front of slots, where light or a jaw must pass. Leave a part out, or make it smaller.",
            $"{found.Message} {found.Remedy}"
        );
    }

    private static Placement BesideALane(string name, LaneKind kind) =>
        new(
            new Block(name, new PartFootprint([Rect.Centred(16, 16)], [new Lane(new Rect(8, -1.5, 11.2, 1.5), kind)])),
            0,
            0
        );

    private static Placement Square(string name, PartHeight height) =>
        new(new Block(name, new PartFootprint([Rect.Centred(2, 2)], []) { Height = height }), 0, 0);

    [Theory]
    [InlineData(0, PixelSnap.Pixels, false)]
    [InlineData(5, PixelSnap.None, false)]
    [InlineData(5, PixelSnap.Pixels, true)]
    public void OnlyATiltedObjectGoesWithoutTheSnapThatWasAskedFor(double angle, PixelSnap snap, bool said)
    {
        TestObject made = TestObject.Of(
            Standard with
            {
                Tilt = new TiltSpec { Angle = angle },
                Process = Printer with { Snap = snap },
            }
        );
        Assert.Equal(said, made.Findings.Any(f => f.Rule == "tilt-without-snap"));
    }

    private sealed class Block(string name, PartFootprint footprint) : ITestPart
    {
        public string Name => name;

        public PartFootprint Footprint => footprint;

        public IEnumerable<PartBody> Bodies(PartPlace place) => [];
    }

    [Fact]
    public void AWellTooNarrowForVentsAndABoxThatSinksInAreFound()
    {
        Assert.Equal(
            Severity.Error,
            Assert.Single(BoxRules.Vents("box1", new BoxWell(new KeyedSquare(0.35, 0.35, 0.1, 0.1), 1.5))).Severity
        );
        var joint = new JointPlan(1, 0.05, 0.05)
        {
            Lift = 0,
            EngagedFrom = 0,
            EngagedTo = 4,
            Protrusion = 0.4,
        };
        Assert.Equal("box-sinks-in", Assert.Single(NestRules.Seat(joint)).Rule);
    }

    // CHECKS.md section 8.2, round bar, computed there for a tip force of 0.1 N at 10 mm.
    [Theory]
    [InlineData(0.3, 0.07068583471, 0.002650718801, 377.2561614)]
    [InlineData(0.4, 0.1256637061, 0.006283185307, 159.1549431)]
    [InlineData(0.5, 0.1963495408, 0.0122718463, 81.48733086)]
    [InlineData(0.8, 0.5026548246, 0.05026548246, 19.89436789)]
    [InlineData(1.0, 0.7853981634, 0.09817477042, 10.18591636)]
    public void ARoundBarBearsWhatTextbooksSay(double diameter, double area, double modulus, double stress)
    {
        Assert.Equal(area, RoundBar.Area(diameter), area * 1e-9);
        Assert.Equal(modulus, RoundBar.SectionModulus(diameter), modulus * 1e-9);
        Assert.Equal(stress, RoundBar.BendingStress(0.1, 10, diameter), stress * 1e-9);
    }

    [Fact]
    public void TheNeckOfTheSecondStandardBoxIsJudgedByItsLoads()
    {
        BoxShape box = new NestPlan(Boxes, new PixelGrid(Standard)).Boxes[1];
        // 10 kPa on 11.2 mm square, over a round bar of 1.8 mm: 1.2544 N / 2.5447 mm2.
        Assert.Equal(0.010 * 11.2 * 11.2 / (Math.PI * 0.81), NeckStrength.Tension(box.Frame.Outside), 12);
        // 1 kPa on 11.2 mm times the height above the notch, at half that height: M / (pi d^3 / 32).
        double height = box.Rim - 0.5;
        Assert.Equal(
            0.001 * 11.2 * height * height / 2 * 32 / (Math.PI * Math.Pow(1.8, 3)),
            NeckStrength.Bending(box),
            12
        );
    }
}
