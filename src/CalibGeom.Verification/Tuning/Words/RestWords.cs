using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>What a further second of rest is worth.</summary>
internal static class RestWords
{
    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        if (result.Verdict == Policy.Verdict.NotKnown)
            yield break;
        double rest = result.Next.Settings.Rest,
            gain = 1000 * result.Response.RestGain(rest);
        yield return Note(
            "rest",
            Text($"Beyond {rest:0.0} s a further second of rest should draw edges back by {gain:0.0} micrometres.")
        );
    }
}
