using CalibGeom.Verification.Tuning.Policy;

namespace CalibGeom.Cli.Tune;

/// <summary>What <c>--hold</c> names.</summary>
internal static class HeldWords
{
    /// <exception cref="InputException">A word is none of them.</exception>
    internal static Held Read(IEnumerable<string> words) =>
        words.Aggregate(
            Held.None,
            (held, word) =>
                held
                | word switch
                {
                    "time" => Held.Time,
                    "rest" => Held.Rest,
                    "offset" => Held.Offset,
                    _ => throw new InputException(
                        InputIds.Option,
                        $"--hold {word} is nothing to hold. Use time, rest or offset."
                    ),
                }
        );
}
