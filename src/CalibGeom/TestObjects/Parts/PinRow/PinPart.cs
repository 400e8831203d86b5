using CalibGeom.Meshes;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.PinRow;

/// <summary>The row of pins with the block of holes behind it.</summary>
internal sealed class PinPart(PinSpec spec) : ITestPart
{
    /// <summary>Gauge lines round half a turn.</summary>
    private const int LinesRound = 8;

    /// <summary>Height over diameter beyond which a pin bends. Common practice, no source.</summary>
    private const double MostSlender = 20;

    private readonly PinShape shape = new(spec);

    public string Name => "pins";

    public int TunnelCount => spec.Diameters.Count;

    public string Label => string.Join(' ', spec.Diameters.Select(d => FormattableString.Invariant($"{d:0.###}")));

    public PartFootprint Footprint => new([Rect.Centred(shape.Width, shape.Depth)], []);

    /// <summary>The row of an object; none without the group.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec) =>
        spec.Pins is { } pins ? [new PinPart(pins)] : [];

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [
            .. spec.Diameters.Select((_, i) => new PartBody($"pin{i + 1}", [shape.Pin(i, place)])),
            new PartBody("holes", shape.Block(place)),
        ];

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        for (int i = 0; i < spec.Diameters.Count; i++)
            yield return PartFeature.Size(
                "",
                $"outside jaws, half way up, pin {i + 1} from the left",
                Round(
                    FeatureId.Of("pin", i + 1, KnownFeatures.Diameter),
                    shape.Middle(i),
                    shape.PinRow,
                    i,
                    place,
                    GaugeLine.Outside
                )
            );
        for (int i = 0; i < spec.Diameters.Count; i++)
            yield return PartFeature.Size(
                "",
                $"pin gauge, hole {i + 1} from the left",
                Round(
                    FeatureId.Of("hole", i + 1, KnownFeatures.Diameter),
                    shape.Middle(i),
                    shape.HoleRow,
                    i,
                    place,
                    GaugeLine.Inside
                )
            );
    }

    public IEnumerable<Finding> Check(PartPlace place) =>
        [
            .. Judge.Ascending("pins.diameters", spec.Diameters),
            .. Judge.AtMost(
                "pin-slender",
                "pins.height",
                "The height of the thinnest pin over its diameter",
                spec.Height / spec.Diameters.Min(),
                MostSlender,
                "",
                "Make pins.height lower or start with a thicker pin; this one bends in the resin."
            ),
            Judge.Bridge(Name, "Each vent's roof", spec.Diameters.Max(PinShape.VentWidth)),
            .. place.Spec.Process is { } process
                ? [SizeNotes.Layers("pins.height", spec.Height, process.LayerHeight)]
                : (Finding[])[],
        ];

    /// <summary>Square to the axis, evenly round it, in the straight part of pin or hole.</summary>
    private GaugeLine[] Round(
        FeatureId feature,
        double x,
        double y,
        int index,
        PartPlace place,
        Func<FeatureId, Vector3D, Vector3D, double, double, GaugeLine> make
    )
    {
        double diameter = spec.Diameters[index];
        Vector3D middle = place.Point(x, y, place.BaseZ + shape.GaugeHeight);
        return
        [
            .. Enumerable
                .Range(0, LinesRound)
                .Select(k =>
                {
                    (double sin, double cos) = Math.SinCos(Math.PI * k / LinesRound);
                    double thickness = y == shape.PinRow ? diameter : PinShape.Wall;
                    return make(feature, middle, new Vector3D(cos, sin, 0), diameter, thickness) with { Round = true };
                }),
        ];
    }
}
