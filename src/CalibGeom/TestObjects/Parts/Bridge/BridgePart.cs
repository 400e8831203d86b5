using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Bridge;

/// <summary>The bridge: jaws come from the front of its frame, one over the beam and one below it.</summary>
internal sealed class BridgePart(BridgeSpec spec, double plinthTop) : ITestPart
{
    /// <summary>The places along the beam where its thickness is taken, as shares of the opening.</summary>
    private static readonly double[] Shares = [-0.25, 0, 0.25];

    private readonly double under = Grid.Snap(plinthTop + Proportions.BridgeOpeningHeight);

    public string Name => KnownFeatures.Bridge;

    public int TunnelCount => 1;

    public PartFootprint Footprint =>
        new(
            [Rect.Centred(Length, Proportions.BridgeDepth)],
            [
                new Lane(
                    new Rect(
                        -Proportions.JawWidth / 2,
                        -Proportions.BridgeDepth / 2 - Proportions.JawLength,
                        Proportions.JawWidth / 2,
                        -Proportions.BridgeDepth / 2
                    ),
                    LaneKind.Open
                ),
            ]
        )
        {
            MayTurn = true,
        };

    public Finding? MissingWhenTilted =>
        Judge.Note(
            "tilt-without-bridge",
            KnownFeatures.BridgeThickness,
            "A tilted object has no bridge: its underside would not be level, and layers would step along it."
        );

    /// <summary>The bridge of an object; none without the group.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, double plinthTop) =>
        spec.Bridge is { } bridge ? [new BridgePart(bridge, plinthTop)] : [];

    public IEnumerable<PartBody> Bodies(PartPlace place) => [new PartBody(Name, Lofts(place))];

    public IEnumerable<PartFeature> Features(PartPlace place) =>
        [
            PartFeature.Size(
                "z",
                "thin ends of the outside jaws over the beam of the bridge, one jaw in its opening, in the middle",
                [.. Shares.Select(s => Line(s * Proportions.BridgeOpening, place))]
            ),
        ];

    public IEnumerable<Finding> Check(PartPlace place) =>
        [
            Judge.Bridge(Name, "The beam", Proportions.BridgeOpening),
            .. place.Spec.Process is { } process ? InLayers(process) : [],
        ];

    private static double Length => Proportions.BridgeOpening + 2 * Proportions.BridgePost;

    private IEnumerable<Finding> InLayers(ProcessSpec process) =>
        [
            .. Judge.AboveBaseLayers(
                "bridge-near-plate",
                KnownFeatures.BridgeThickness,
                "The beam's underside",
                under,
                "the beam",
                process
            ),
            SizeNotes.Layers(KnownFeatures.BridgeThickness, spec.Thickness, process.LayerHeight),
        ];

    private IReadOnlyList<Loft> Lofts(PartPlace place)
    {
        const double Depth = Proportions.BridgeDepth / 2,
            Inner = Proportions.BridgeOpening / 2;
        double outer = Length / 2;
        return
        [
            Loft.Prism(place.Rectangle(-outer, -Depth, -Inner, Depth), plinthTop, under),
            Loft.Prism(place.Rectangle(Inner, -Depth, outer, Depth), plinthTop, under),
            Loft.Prism(place.Rectangle(-outer, -Depth, outer, Depth), under, Grid.Snap(under + spec.Thickness)),
        ];
    }

    private GaugeLine Line(double along, PartPlace place)
    {
        var up = new Vector3D(0, 0, 1);
        return new GaugeLine(
            KnownFeatures.BridgeThickness,
            up,
            new GaugeFace(place.Point(along, 0, under), up * -1, spec.Thickness, Proportions.BridgeOpeningHeight),
            new GaugeFace(place.Point(along, 0, under + spec.Thickness), up, spec.Thickness, GaugeLine.Clear)
        );
    }
}
