namespace CalibGeom.Verification.Logs;

/// <summary>
/// What makes one ask before a trial is added: readings that are there already, a setting that looks like a slip of the
/// decimal point, a name that nearly is another.
/// </summary>
public static class TrialDoubts
{
    /// <summary>The rule of readings that are in the log already.</summary>
    public const string SameReadings = "same-readings";

    // A person changes exposure by per cents, at most to double or half; beyond three times a digit has slipped.
    private const double Likely = 3;

    /// <summary>The doubts, none when all is likely.</summary>
    /// <param name="next">The trial to add.</param>
    /// <param name="log">The log it is to be added to.</param>
    public static IReadOnlyList<Finding> Check(Trial next, TrialLog log)
    {
        ArgumentNullException.ThrowIfNull(next);
        ArgumentNullException.ThrowIfNull(log);
        var doubts = new List<Finding>();
        if (log.Entries.LastOrDefault(e => !e.TakenBack && e.Trial.HasSameReadings(next)) is { } same)
            doubts.Add(
                new Finding(
                    SameReadings,
                    Severity.Error,
                    $"trial {same.Number}",
                    $"Trial {same.Number} of the log has these very readings.",
                    "A print counts once. If it was printed and measured again with the same outcome, say so."
                )
            );
        if (log.Trials.LastOrDefault() is { } last)
            doubts.AddRange(Unlikely(next, last));
        doubts.AddRange(Names(next, log));
        return doubts;
    }

    private static IEnumerable<Finding> Unlikely(Trial next, Trial last)
    {
        (string What, string Unit, double Value, double Before)[] all =
        [
            ("exposure", "s", next.Settings.Time, last.Settings.Time),
            ("base exposure", "s", next.Cycle.BaseTime, last.Cycle.BaseTime),
            ("layer height", "mm", next.Conditions.Layer, last.Conditions.Layer),
        ];
        foreach ((string what, string unit, double value, double before) in all)
            if (value > 0 && before > 0 && Math.Max(value / before, before / value) > Likely)
                yield return new Finding(
                    "unlikely-setting",
                    Severity.Error,
                    what,
                    FormattableString.Invariant(
                        $"The {what} is {value} {unit} after {before} {unit}: {Math.Max(value / before, before / value):0.#} times apart."
                    ),
                    "Look at the decimal point. If it is meant, say so."
                )
                {
                    Value = value,
                    Limit = value > before ? before * Likely : before / Likely,
                    Unit = unit,
                };
    }

    private static IEnumerable<Finding> Names(Trial next, TrialLog log)
    {
        (string What, Func<TrialConditions, string> Get)[] all =
        [
            ("resin", c => c.Resin),
            ("printer", c => c.Printer),
            ("bottle", c => c.Bottle),
            ("film", c => c.Film),
            ("screen", c => c.Screen),
        ];
        foreach ((string what, Func<TrialConditions, string> get) in all)
        {
            string name = get(next.Conditions);
            string[] known = log.Trials.Select(t => get(t.Conditions)).Where(n => n.Length > 0).Distinct().ToArray();
            if (name.Length > 0 && !known.Contains(name) && known.FirstOrDefault(n => AreNear(n, name)) is { } near)
                yield return new Finding(
                    "near-name",
                    Severity.Error,
                    what,
                    $"The {what} is \"{name}\"; the log knows \"{near}\", and trials of two names are never pooled.",
                    $"Write \"{near}\" if that is meant. If it is another {what}, say so."
                );
        }
    }

    /// <summary>Whether two names differ only in capitals, spaces, signs, or one letter of a long name.</summary>
    private static bool AreNear(string a, string b)
    {
        string one = Bare(a),
            other = Bare(b);
        if (one == other)
            return true;
        // "resin 1" and "resin 2" are two names, not a slip.
        if (Digits(one) != Digits(other))
            return false;
        return Math.Min(one.Length, other.Length) >= 5 && Spelling.Distance(one, other) == 1;
    }

    private static string Bare(string name) => new([.. name.Where(char.IsLetterOrDigit).Select(char.ToLowerInvariant)]);

    private static string Digits(string name) => new([.. name.Where(char.IsDigit)]);
}
