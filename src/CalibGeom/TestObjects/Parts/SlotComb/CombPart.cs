using CalibGeom.Meshes;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.SlotComb;

/// <summary>The slot comb.</summary>
internal sealed class CombPart(SlotsSpec spec, double plinthTop) : ITestPart
{
    /// <summary>The lowest tunnel that any exposure leaves open, and one that most do, mm.</summary>
    private const double LeastSlot = 0.05,
        GoodSlot = 0.1;

    private readonly CombShape shape = new(spec, plinthTop);

    public string Name => KnownFeatures.SlotsOpen.Item;

    public int TunnelCount => spec.Heights.Count;

    /// <summary>
    /// The bar, and in front of it and behind it room for the light that is to be seen through the tunnels.
    /// </summary>
    public PartFootprint Footprint
    {
        get
        {
            double half = shape.Length / 2 + Proportions.SightMargin,
                depth = Proportions.TunnelDepth / 2;
            return new PartFootprint(
                [Rect.Centred(shape.Length, Proportions.TunnelDepth)],
                [
                    new Lane(new Rect(-half, depth, half, depth + Proportions.SightLength), LaneKind.Open),
                    new Lane(new Rect(-half, -depth - Proportions.SightLength, half, -depth), LaneKind.Open),
                ]
            )
            {
                MayTurn = true,
                Openings = [.. spec.Heights.Select((h, i) => OpeningOf(i, h))],
            };
        }
    }

    /// <summary>The comb of an object; none without the group.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, double plinthTop) =>
        spec.Slots is { } slots ? [new CombPart(slots, plinthTop)] : [];

    public IEnumerable<PartBody> Bodies(PartPlace place) => [new PartBody(Name, shape.Lofts(place))];

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        GaugeLine[] lines = [.. Enumerable.Range(0, spec.Heights.Count).Select(i => Line(i, place))];
        yield return PartFeature.Count(
            KnownFeatures.SlotsOpen,
            "hold against light, or push a wire or film of 0.1 mm through: count the tunnels open from end to end",
            lines
        );
        string from = First(place);
        for (int i = 0; i < lines.Length; i++)
            yield return PartFeature.Size("z", $"feeler gauge, tunnel {i + 1} of the comb from the {from}", lines[i]);
    }

    public IEnumerable<Finding> Check(PartPlace place) =>
        [
            .. Judge.Ascending("slots.heights", spec.Heights),
            .. Judge.AtLeast(
                "gap-too-narrow",
                "slots.heights",
                "The lowest tunnel",
                spec.Heights.Min(),
                LeastSlot,
                GoodSlot,
                "mm",
                "Print-through closes tunnels this low at any exposure; start higher."
            ),
            Judge.Bridge(Name, "Each tunnel's roof", Proportions.TunnelWidth),
            .. place.Spec.Process is { } process ? InLayers(process) : [],
        ];

    private IEnumerable<Finding> InLayers(ProcessSpec process) =>
        [
            .. Judge.AboveBaseLayers(
                "slots-near-plate",
                KnownFeatures.SlotsOpen,
                "The tunnels' floor",
                shape.Floor,
                "the tunnels",
                process
            ),
            .. SizeNotes.Layers("slots.heights", "The lowest tunnel", spec.Heights, process.LayerHeight),
        ];

    private Opening OpeningOf(int tunnel, double height)
    {
        Rect room = Rect.Centred(Proportions.TunnelWidth, Proportions.TunnelDepth).Move(shape.MiddleOf(tunnel), 0);
        return new Opening(room, AlongX: false, shape.Floor, shape.Floor + height);
    }

    private GaugeLine Line(int tunnel, PartPlace place)
    {
        double height = spec.Heights[tunnel];
        return GaugeLine.Inside(
            KnownFeatures.SlotHeight(tunnel + 1),
            place.Point(shape.MiddleOf(tunnel), 0, shape.Floor + height / 2),
            new Vector3D(0, 0, 1),
            height,
            Proportions.TunnelFloorThickness
        );
    }

    /// <summary>The side of the object that tunnel 1 is on.</summary>
    private static string First(PartPlace place) =>
        (place.Quarters & 3) switch
        {
            0 => "left",
            1 => "front",
            2 => "right",
            _ => "back",
        };
}
