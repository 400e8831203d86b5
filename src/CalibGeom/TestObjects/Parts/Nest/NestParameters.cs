using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>The parameters of <see cref="NestSpec"/>.</summary>
internal static class NestParameters
{
    internal static readonly SpecParameter Sizes = new("nest", "sizes", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 3,
        Maximum = 100,
        MostEntries = 8,
        Meaning = "outside widths, ascending; box 1 first",
        Why = "Every third of R20; the smallest pocket still takes a caliper's inside jaws.",
    };

    internal static readonly SpecParameter Clearances = new("nest", "clearances", SpecKind.PerAxisList)
    {
        Unit = "mm",
        Minimum = -1,
        Maximum = 2,
        FewestEntries = 0,
        MostEntries = 7,
        Meaning =
            "clearance per side of each joint, one entry for each pair of neighbouring boxes, positive = gap; "
            + "each entry a number, or [x, y] where the axes differ; a negative one makes a not-go joint",
        Why = "0.05 for every joint: within the reach of growth, so that the felt fit says which way to go.",
    };

    internal static readonly SpecParameter Wall = new("nest", "wall", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 0.4,
        Maximum = 10,
        Meaning = "wall of box 1, which gives it its pocket",
        Why = "Several layers of light wide, so that the wall is solid; inside jaws still fit into box 1.",
    };

    internal static readonly SpecParameter GaugeBand = new("nest", "gaugeBand", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 1,
        Maximum = 40,
        Meaning = "height of the level band where widths are measured",
        Why = "High enough for a caliper's jaws to lie flat; a preferred number (R5).",
    };

    internal static readonly SpecParameter PocketDepth = new("nest", "pocketDepth", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 1,
        Maximum = 60,
        Meaning = "depth of each pocket from the mouth to the floor",
        Why = "Takes the gauge band and the lead-ins; a preferred number (R10).",
    };

    internal static SpecGroup Group =>
        new("nest", true, [Sizes, Clearances, Wall, GaugeBand, PocketDepth])
        {
            Meaning =
                "Square boxes that fit into each other. Box 1 is the innermost; joint j lies between box j "
                + "and box j+1.",
            Basis = () => new NestSpec(),
        };
}
