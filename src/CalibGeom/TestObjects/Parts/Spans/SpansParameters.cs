using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Spans;

/// <summary>The parameters of <see cref="SpansSpec"/>.</summary>
internal static class SpansParameters
{
    internal static readonly SpecParameter X = new("spans", "x", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 8,
        Maximum = 300,
        Meaning = "outside width over the pair along X",
        Why = "Long enough to show shrinkage on a caliper; a preferred number (R5).",
    };

    internal static readonly SpecParameter Y = new("spans", "y", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 8,
        Maximum = 300,
        Meaning = "outside width over the pair along Y",
        Why = "As long as the plinth allows; a preferred number (R5).",
    };

    internal static SpecGroup Group =>
        new("spans", true, [X, Y])
        {
            Meaning =
                "Two pairs of posts whose far outside faces tell scale (which grows with length) from "
                + "growth (which does not).",
            Basis = () => new SpansSpec(),
        };
}
