using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Bridge;

/// <summary>The parameters of <see cref="BridgeSpec"/>.</summary>
internal static class BridgeParameters
{
    internal static readonly SpecParameter Thickness = new("bridge", "thickness", SpecKind.Number)
    {
        Unit = "mm",
        Minimum = 1,
        Maximum = 6,
        Meaning = "thickness of the beam",
        Why = "Stiff between a caliper's jaws, and thicker than light goes; whole layers of 0.05 and 0.1 mm.",
    };

    internal static SpecGroup Group =>
        new("bridge", true, [Thickness])
        {
            Meaning =
                "A beam over two posts, thicker by the print-through than designed: a caliper reads what the slot "
                + "comb brackets.",
            Basis = () => new BridgeSpec(),
        };
}
