using CalibGeom.Meshes;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.SqueezeTab;

/// <summary>The squeeze tab at the plinth's edge.</summary>
internal sealed class TabPart(SqueezeSpec spec, double plinthTop) : ITestPart
{
    /// <summary>Distance that others keep from the tab, mm: a blade goes between.</summary>
    private const double Room = 1.0;

    /// <summary>Bars that hold, and slots that some exposure leaves open, mm.</summary>
    private const double LeastBar = 0.15,
        GoodBar = 0.25,
        LeastSlot = 0.05,
        GoodSlot = 0.1;

    private readonly TabShape shape = new(spec, plinthTop);

    public string Name => KnownFeatures.Squeeze;

    public int TunnelCount => spec.Heights.Count;

    public PartFootprint Footprint =>
        new([new Rect(-TabShape.HalfBar, -TabShape.PostReach, TabShape.HalfBar, TabShape.Reach)], [])
        {
            Gap = Room,
            AtEdge = true,
            Openings =
            [
                .. shape.Slots.Select(s => new Opening(
                    new Rect(-TabShape.HalfDepth, TabShape.SlotNear, TabShape.HalfDepth, TabShape.SlotFar),
                    AlongX: true,
                    s.Floor,
                    s.Roof
                )),
            ],
        };

    public Finding? MissingWhenTilted =>
        Judge.Note(
            "tilt-without-squeeze",
            KnownFeatures.SqueezeOpen,
            "A tilted object has no squeeze tab: its slots would not be level with the plate."
        );

    /// <summary>The tab of an object; none without the group.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, double plinthTop) =>
        spec.Squeeze is { } squeeze ? [new TabPart(squeeze, plinthTop)] : [];

    public IEnumerable<PartBody> Bodies(PartPlace place) => [new PartBody(Name, shape.Lofts(place))];

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        GaugeLine[] lines = [.. shape.Slots.Select((s, i) => Line(i, s.Floor, place))];
        yield return PartFeature.Count(
            KnownFeatures.SqueezeOpen,
            "look along the plinth's edge against light, or push a wire or film of 0.1 mm through: count the slots open from end "
                + "to end",
            lines
        );
        for (int i = 0; i < lines.Length; i++)
            yield return PartFeature.Size("z", $"feeler gauge, slot {i + 1} of the tab from the plate", lines[i]);
    }

    public IEnumerable<Finding> Check(PartPlace place) =>
        [
            .. Judge.Ascending("squeeze.heights", spec.Heights),
            .. Judge.AtLeast(
                "wall-too-thin",
                "squeeze.bar",
                "The bar between two slots of the squeeze tab",
                spec.Bar,
                LeastBar,
                GoodBar,
                "mm",
                "Make squeeze.bar thicker."
            ),
            .. Judge.AtLeast(
                "gap-too-narrow",
                "squeeze.heights",
                "The lowest slot of the squeeze tab",
                spec.Heights.Min(),
                LeastSlot,
                GoodSlot,
                "mm",
                "Print-through closes slots this low at any exposure; start higher."
            ),
            Judge.Bridge(Name, "Each bar of the squeeze tab", Proportions.TabSlotWidth),
            .. place.Spec.Process is { } process ? InLayers(process.LayerHeight) : [],
        ];

    private IEnumerable<Finding> InLayers(double layer) =>
        [
            .. SizeNotes.Layers("squeeze.heights", "The lowest slot of the squeeze tab", spec.Heights, layer),
            .. SizeNotes.NoLowerThanALayer("squeeze.bar", "A bar of the squeeze tab", spec.Bar, layer),
        ];

    private GaugeLine Line(int slot, double floor, PartPlace place) =>
        GaugeLine.Inside(
            KnownFeatures.SqueezeHeight(slot + 1),
            place.Point(0, (TabShape.SlotNear + TabShape.SlotFar) / 2, floor + spec.Heights[slot] / 2),
            new Vector3D(0, 0, 1),
            spec.Heights[slot],
            spec.Bar
        );
}
