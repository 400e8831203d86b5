using CalibGeom.TestObjects.Parts.Bridge;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Parts.Spans;

namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// Ready-made specs. All sizes are preferred numbers (ISO 3) unless said. Immutable and safe to share between threads.
/// </summary>
public static class Presets
{
    /// <summary>The growth tolerance of the preset <c>limit</c>, mm per edge.</summary>
    public const double DefaultGrowthTolerance = 0.05;

    /// <summary>How far the axis that a not-go joint does not judge is relieved, mm per side.</summary>
    private const double Relief = 0.3;

    /// <summary>For a new resin: three boxes, spans, columns, slot comb and squeeze tab on one plinth.</summary>
    public static TestObjectSpec Standard { get; } = new();

    /// <summary>Small, to stand beside production parts on every plate: two boxes, a bridge and four columns.</summary>
    public static TestObjectSpec Witness { get; } = MakeWitness();

    /// <summary>Low and quick, to find the exposure: one small joint, columns, slot comb and spans.</summary>
    public static TestObjectSpec Search { get; } = MakeSearch();

    /// <summary>For fine pixels and thin layers: smaller boxes, tighter joints, thinner columns.</summary>
    public static TestObjectSpec Fine { get; } = MakeFine();

    /// <summary>For coarse pixels and 0.1 mm layers: larger boxes, wider joints, thicker columns.</summary>
    public static TestObjectSpec Coarse { get; } = MakeCoarse();

    /// <summary>The presets by name, in the order that they are listed in.</summary>
    public static IReadOnlyList<Preset> All { get; } =
    [
        new(
            "standard",
            "For a new resin: three boxes, spans, columns, slot comb and squeeze tab on one plinth.",
            Standard
        ),
        new(
            "witness",
            "Small, to stand beside production parts on every plate: two boxes, a bridge and four columns.",
            Witness
        ),
        new("search", "Low and quick, to find the exposure: one small joint, columns, slot comb and spans.", Search),
        new("fine", "For fine pixels and thin layers: smaller boxes, tighter joints, thinner columns.", Fine),
        new("coarse", "For coarse pixels and 0.1 mm layers: larger boxes, wider joints, thicker columns.", Coarse),
        new(
            "limit",
            "Answers by feel whether growth is within +-0.05 mm: a go joint and a not-go joint for each axis.",
            Limit()
        ),
    ];

    /// <summary>The preset with a name, or null.</summary>
    /// <param name="name">Such as <c>standard</c>; case does not matter.</param>
    public static Preset? Find(string name) =>
        All.FirstOrDefault(p => p.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// A nest that judges growth without a caliper. Joint 1 is a go joint: it seats as long as growth per edge is at
    /// most the tolerance. Joints 2 and 3 are not-go joints, one for X and one for Y: each seats only once the boxes
    /// have shrunk by more than the tolerance per edge. Growth g takes 2 g from a clearance per side (each of the two
    /// faces grows by g), so the go joint has clearance 2 G and the not-go joints -2 G. As in the Taylor principle (ISO
    /// 1938-1) the go joint judges both axes at once and a not-go joint one alone; its other axis is relieved by 0.3
    /// mm.
    /// </summary>
    /// <param name="growthTolerance">G, the growth per edge that is still good, mm, 0.01 to 0.1. Default 0.05.</param>
    /// <exception cref="ArgumentOutOfRangeException">Beyond 0.01 to 0.1 mm, or not a number: above that the relieved
    /// axis could bind, below it no joint can tell.</exception>
    public static TestObjectSpec Limit(double growthTolerance = DefaultGrowthTolerance)
    {
        if (!(growthTolerance >= 0.01 && growthTolerance <= 0.1))
            throw new ArgumentOutOfRangeException(
                nameof(growthTolerance),
                growthTolerance,
                "The growth tolerance must be 0.01 to 0.1 mm."
            );
        double go = 2 * growthTolerance;
        return new TestObjectSpec
        {
            Nest = new NestSpec
            {
                Sizes = [8.0, 11.2, 16.0, 22.4],
                Clearances = [go, new PerAxis(-go, Relief), new PerAxis(Relief, -go)],
            },
            Columns = null,
            Slots = null,
            Squeeze = null,
        };
    }

    private static TestObjectSpec MakeWitness() =>
        new()
        {
            Nest = new NestSpec { Sizes = [8.0, 11.2] },
            Columns = new ColumnsSpec { Diameters = [0.28, 0.355, 0.45, 0.56], Copies = 1 },
            Spans = null,
            Slots = null,
            Bridge = new BridgeSpec(),
            Squeeze = null,
            Labels = null,
        };

    private static TestObjectSpec MakeSearch() =>
        new()
        {
            Nest = new NestSpec
            {
                Sizes = [5.6, 8.0],
                GaugeBand = 4.0,
                PocketDepth = 4.5,
            },
            Plinth = new PlinthSpec { Thickness = 2.0 },
            Spans = new SpansSpec { X = 31.5, Y = 20 },
            Columns = new ColumnsSpec { Height = 4.0 },
            Squeeze = null,
        };

    private static TestObjectSpec MakeFine() =>
        new()
        {
            Nest = new NestSpec
            {
                Sizes = [6.3, 9.0, 12.5],
                Clearances = [0.035, 0.035],
                Wall = 1.0,
            },
            Columns = new ColumnsSpec
            {
                Diameters = [0.16, 0.18, 0.2, 0.224, 0.25, 0.28, 0.315, 0.355, 0.4],
                Height = 4.0,
                HeadDiameter = 1.0,
                Pitch = 3.15,
            },
        };

    private static TestObjectSpec MakeCoarse() =>
        new()
        {
            Process = new ProcessSpec { PixelPitch = 0.05, LayerHeight = 0.1 },
            Nest = new NestSpec
            {
                Sizes = [10.0, 14.0, 20.0],
                Clearances = [0.1, 0.1],
                Wall = 1.6,
            },
            Columns = new ColumnsSpec
            {
                Diameters = [0.4, 0.5, 0.63, 0.8, 1.0, 1.25, 1.6],
                Height = 8.0,
                HeadDiameter = 2.5,
                Pitch = 5.0,
            },
        };
}
