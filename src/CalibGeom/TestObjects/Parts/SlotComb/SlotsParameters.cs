using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.SlotComb;

/// <summary>The parameters of <see cref="SlotsSpec"/>.</summary>
internal static class SlotsParameters
{
    internal static readonly SpecParameter Heights = new("slots", "heights", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 0.02,
        Maximum = 5,
        MostEntries = 32,
        Meaning = "tunnel heights, ascending",
        Why = "R10 over a factor of five, so that some tunnels may be expected to close and some to stay open.",
    };

    internal static SpecGroup Group =>
        new("slots", true, [Heights])
        {
            Meaning = "A comb of tunnels of graded height: the lowest open one brackets the print-through.",
            Basis = () => new SlotsSpec(),
        };
}
