namespace CalibGeom.Verification.Maps;

/// <summary>Where the light is weakest, in words that claim no more than the coupons tell.</summary>
internal static class WeakestWords
{
    /// <summary>Four corners and the middle.</summary>
    private const int AllPlaces = 5;

    internal static string Of(IReadOnlyList<WeakPlace> places) =>
        places.Count switch
        {
            1 => Text(
                $"Weakest {(IsMiddle(places[0]) ? "in the middle" : $"at the corner {Corner(places[0])}")}: {Below(places[0])}; {(IsMiddle(places[0]) ? "no corner" : "neither another corner nor the middle")} is weaker with probability {places[0].Probability:0.00}."
            ),
            2 when Side(places[0], places[1]) is { } side => Text(
                $"Weakest on the {side} side: at the corner {Corner(places[0])} ({places[0].Probability:0.00}) or {Corner(places[1])} ({places[1].Probability:0.00}), the first {Below(places[0])}."
            ),
            AllPlaces => "Where it is weakest cannot be told from these coupons: at any corner or in the middle.",
            _ => Text(
                $"Weakest at one of: {string.Join(", ", places.Select(Listed))}; the first is {Below(places[0])}."
            ),
        };

    private static string Listed(WeakPlace w) =>
        Text($"{(IsMiddle(w) ? "the middle" : $"the corner {Corner(w)}")} ({w.Probability:0.00})");

    private static string Below(WeakPlace w) =>
        Text(
            $"{100 * w.Lacks.Value:0} % ({100 * Math.Max(0, w.Lacks.Low):0} to {100 * w.Lacks.High:0}) below the brightest place"
        );

    private static string? Side(WeakPlace a, WeakPlace b) =>
        IsMiddle(a) || IsMiddle(b) ? null
        : a.X == b.X ? Across(a)
        : a.Y == b.Y ? Along(a)
        : null;

    private static bool IsMiddle(WeakPlace w) => (w.X, w.Y) == (0, 0);

    private static string Corner(WeakPlace w) => $"{Along(w)} {Across(w)}";

    private static string Across(WeakPlace w) => w.X < 0 ? "left" : "right";

    private static string Along(WeakPlace w) => w.Y < 0 ? "front" : "back";

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
