using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>A trial that was printed under other conditions than the last one. Immutable.</summary>
/// <param name="Number">Its number in the order of printing, from 1.</param>
/// <param name="Trial">The trial.</param>
/// <param name="Differences">What differs, in words.</param>
public sealed record TrialApart(int Number, Trial Trial, IReadOnlyList<string> Differences)
{
    /// <summary>What differs, in one line.</summary>
    public string Why => string.Join(", ", Differences);
}
