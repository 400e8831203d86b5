using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.WallFan;

/// <summary>
/// Thin walls side by side, the thinnest at the left, each with free ends so that none holds another.
/// </summary>
internal sealed class WallPart(WallSpec spec, PixelGrid pixels) : ITestPart
{
    /// <summary>Room between neighbouring walls, mm: resin drains and a caliper's thin jaws go in.</summary>
    private const double Between = 2.5;

    /// <summary>Height over thickness beyond which a wall bends in the resin. Common practice, no source.</summary>
    private const double MostSlender = 60;

    /// <summary>Pixels that a wall needs at least, and to be of even thickness.</summary>
    private const double LeastPixels = 1,
        GoodPixels = 2;

    /// <summary>
    /// The places along a wall where its thickness is taken, as shares of its length from the middle.
    /// </summary>
    private static readonly double[] Shares = [-0.25, 0, 0.25];

    private readonly double between = pixels.Width(Between).X;
    private readonly double[] made = [.. spec.Thicknesses.Select(t => pixels.Width(t).X)];

    public string Name => "walls";

    public string Label => FormattableString.Invariant($"{spec.Thicknesses[0]:0.###}-{spec.Thicknesses[^1]:0.###}");

    public PartFootprint Footprint => new([Rect.Centred(Width, spec.Length)], []) { OnWholePixels = true };

    /// <summary>The walls of an object; none without the group.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, PixelGrid pixels) =>
        spec.Walls is { } walls ? [new WallPart(walls, pixels)] : [];

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        made.Select((_, i) => new PartBody($"wall{i + 1}", [Loft.Prism(Section(i, place), place.BaseZ, Top(place))]));

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        yield return PartFeature.Count(
            FeatureId.Of(Name, null, KnownFeatures.Standing),
            "count the walls that stand whole and straight",
            [.. made.Select((_, i) => Line(i, 0, place))]
        );
        for (int i = 0; i < made.Length; i++)
            yield return PartFeature
                .Size(
                    "x",
                    $"outside jaws or microscope, half way up, wall {i + 1} from the left",
                    [.. Shares.Select(s => Line(i, s, place))]
                )
                // Thinner than light spreads, a wall does not grow as wide ones do.
                .With(f => f.With(FaceKind.None)) with
            {
                Wanted = spec.Thicknesses[i],
            };
    }

    public IEnumerable<Finding> Check(PartPlace place) =>
        [
            .. Judge.Ascending("walls.thicknesses", spec.Thicknesses),
            .. Judge.AtMost(
                "wall-slender",
                "walls.height",
                "The height of the thinnest wall over its thickness",
                spec.Height / spec.Thicknesses.Min(),
                MostSlender,
                "",
                "Make walls.height lower or start with a thicker wall; this one bends in the resin."
            ),
            .. place.Spec.Process is { } process
                ? Judge.AtLeast(
                    "wall-pixels",
                    "walls.thicknesses",
                    "The thinnest wall",
                    spec.Thicknesses.Min() / process.PixelPitch.X,
                    LeastPixels,
                    GoodPixels,
                    "pixels",
                    "Start with a thicker wall: one pixel is not of even thickness."
                )
                : [],
        ];

    private double Width => made.Sum() + (made.Length - 1) * between;

    private double Top(PartPlace place) => Grid.Snap(place.BaseZ + spec.Height);

    /// <summary>The middle of a wall in the part's frame; all faces lie whole pixels apart.</summary>
    private double Middle(int wall) => -Width / 2 + made[..wall].Sum() + wall * between + made[wall] / 2;

    private Outline Section(int wall, PartPlace place) =>
        place.Rectangle(
            Middle(wall) - made[wall] / 2,
            -spec.Length / 2,
            Middle(wall) + made[wall] / 2,
            spec.Length / 2
        );

    private GaugeLine Line(int wall, double share, PartPlace place) =>
        GaugeLine.Outside(
            FeatureId.Of("wall", wall + 1, "thickness"),
            place.Point(Middle(wall), share * spec.Length, place.BaseZ + spec.Height / 2),
            place.Direction(1, 0),
            made[wall],
            made[wall]
        );
}
