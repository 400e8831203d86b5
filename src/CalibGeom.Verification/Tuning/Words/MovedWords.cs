namespace CalibGeom.Verification.Tuning.Words;

/// <summary>What rest and edge offset do, saying only of those that move that they do it.</summary>
internal static class MovedWords
{
    /// <summary>Such as <c>rest and edge offset hold</c> or <c>rest holds</c>; empty when neither moves.</summary>
    internal static string Of(bool rest, bool offset, string verb) =>
        (rest, offset) switch
        {
            (true, true) => $"rest and edge offset {verb}",
            (true, false) => $"rest {verb}s",
            (false, true) => $"the edge offset {verb}s",
            _ => "",
        };
}
