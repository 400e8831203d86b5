namespace CalibGeom.TestObjects.Specs;

/// <content>The parameters of <see cref="SpansSpec"/>.</content>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter SpansX = new("spans", "x", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 8,
        Maximum = 300,
        Meaning = "outside width over the pair along X",
        Why = "Long enough to show shrinkage on a caliper; a preferred number (R5).",
    };

    internal static readonly SpecParameter SpansY = new("spans", "y", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 8,
        Maximum = 300,
        Meaning = "outside width over the pair along Y",
        Why = "As long as the plinth allows; a preferred number (R5).",
    };
}
