namespace CalibGeom.TestObjects.Specs;

/// <content>The parameters of <see cref="SlotsSpec"/>.</content>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter SlotsHeights = new("slots", "heights", SpecKind.Numbers)
    {
        Unit = "mm",
        Minimum = 0.02,
        Maximum = 5,
        MostEntries = 32,
        Meaning = "tunnel heights, ascending",
        Why = "R10 over a factor of five, so that some tunnels may be expected to close and some to stay open.",
    };
}
