using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>
/// What rest and edge offset do, saying only of those that move that they do it. Where no offset is left of one there
/// was, it is full size that does it: an offset is named only where the order has one.
/// </summary>
internal static class MovedWords
{
    /// <summary>Such as <c>rest and the edge offset hold</c> or <c>rest holds</c>; empty when neither moves.</summary>
    internal static string Of(bool rest, bool offset, ExposureSettings to, string verb) =>
        (rest, offset) switch
        {
            (true, true) => $"rest and {(to.EdgeOffset == 0 ? Full : "edge offset")} {verb}",
            (true, false) => $"rest {verb}s",
            (false, true) => $"{Offset(to)} {verb}s",
            _ => "",
        };

    /// <summary>What an offset that was changed is called.</summary>
    internal static string Offset(ExposureSettings to) => to.EdgeOffset == 0 ? Full : "the edge offset";

    private const string Full = "drawing solids at full size again";
}
