namespace CalibGeom.Plates;

/// <summary>
/// Exposure times for coupons that stand on one plate, for machines and slicers that take an exposure per object or
/// area. Neighbours have equal ratios: cured depth and growth go with the logarithm of the exposure.
/// </summary>
public static class ExposureLadder
{
    /// <summary>The least and the greatest exposure, s.</summary>
    private const double Least = 0.05,
        Greatest = 200;

    /// <summary>Times are rounded to this, s.</summary>
    private const double Step = 0.01;

    /// <summary>The times from one to another, both included, s, rounded to 0.01 s.</summary>
    /// <param name="from">The shortest, s, 0.05 to 200.</param>
    /// <param name="to">The longest, s, above it, to 200.</param>
    /// <param name="count">How many, 2 to 50.</param>
    /// <exception cref="ArgumentException">A value is out of range, or the times are not apart by 0.01 s.</exception>
    public static IReadOnlyList<double> Times(double from, double to, int count)
    {
        Require.Within(from, Least, Greatest, "shortest exposure", "s", nameof(from));
        Require.Within(to, Least, Greatest, "longest exposure", "s", nameof(to));
        Require.Within(count, 2, 50, "number of exposures", "", nameof(count));
        if (to <= from)
            throw new ArgumentException(
                FormattableString.Invariant($"From {from} to {to} s does not rise; the shortest exposure comes first."),
                nameof(to)
            );
        double[] times =
        [
            .. Enumerable.Range(0, count).Select(i => Math.Round(from * Math.Pow(to / from, i / (count - 1.0)), 2)),
        ];
        for (int i = 1; i < count; i++)
            if (times[i] <= times[i - 1])
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"{count} exposures from {from} to {to} s are not {Step} s apart; ask for fewer, or for a longer range."
                    ),
                    nameof(to)
                );
        return times;
    }
}
