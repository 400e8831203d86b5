using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning.Policy;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>How an order of other settings follows from the verdict on the last ones, where it seems not to.</summary>
internal static class LinkWords
{
    internal static string Of(TuningResult result)
    {
        ExposureSettings last = result.Trials[^1].Settings,
            to = result.Next.Settings;
        bool change = result.Next.Kind == NextKind.Change;
        return result.Verdict switch
        {
            Verdict.OnTarget => OnTarget(result, last, to),
            Verdict.Tight or Verdict.Loose when result.Next.Reason == Reason.Trim => Trimmed(result, last, to),
            Verdict.Tight when to.Time > last.Time =>
                $"Light goes up all the same, because strength comes first{Opener(last, to)}.",
            Verdict.Tight when to.Time == last.Time && change =>
                $"Light stays, because strength comes first{Opener(last, to)}.",
            Verdict.Loose when to.Time < last.Time =>
                $"Light goes down all the same, for tunnels and undersides{Closer(last, to)}.",
            Verdict.Loose when to.Time == last.Time && change =>
                $"Light stays: the resin has what it needs{Closer(last, to)}.",
            _ => "",
        };
    }

    private static string OnTarget(TuningResult result, ExposureSettings last, ExposureSettings to) =>
        result.Next.Reason switch
        {
            Reason.Trim => "What is left is small; exposure takes it up.",
            _ when to.Time > last.Time => "Light goes up for strength, not for the fit.",
            _ when to.Time < last.Time => "Light goes down for tunnels and undersides, not for the fit.",
            _ when to.Rest > last.Rest =>
                "Rest goes up to learn whether it makes room, not because the fit asks for it.",
            _ when result.Next.Kind == NextKind.Change => "What is left is small, and free to take up.",
            _ => "",
        };

    // Exposure that trims may go against the verdict, where what goes with it overshoots.
    private static string Trimmed(TuningResult result, ExposureSettings last, ExposureSettings to)
    {
        bool tight = result.Verdict == Verdict.Tight;
        if (to.Time == last.Time || tight == to.Time < last.Time)
            return "";
        bool rest = tight && to.Rest > last.Rest,
            offset = tight ? to.EdgeOffset < last.EdgeOffset : to.EdgeOffset > last.EdgeOffset;
        string moved =
            offset && !rest && to.EdgeOffset != 0
                ? $"a whole pixel of offset {(tight ? "open" : "close")}s"
                : MovedWords.Of(rest, offset, to, tight ? "open" : "close");
        if (moved.Length == 0)
            return $"Light goes {(tight ? "up" : "down")} all the same: it is what other exposures taught.";
        moved = char.ToUpperInvariant(moved[0]) + moved[1..];
        return $"{moved} more than is wanted; {(tight ? "light closes" : "less light opens")} what is too much.";
    }

    private static string Opener(ExposureSettings last, ExposureSettings to) =>
        Gap(MovedWords.Of(to.Rest > last.Rest, to.EdgeOffset < last.EdgeOffset, to, "open"));

    private static string Closer(ExposureSettings last, ExposureSettings to) =>
        Gap(MovedWords.Of(to.Rest < last.Rest, to.EdgeOffset > last.EdgeOffset, to, "close"));

    private static string Gap(string moved) => moved.Length > 0 ? $"; {moved} the gap" : "";
}
