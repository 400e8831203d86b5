using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Single readings that lie far from the other repeats of the same face: they are set aside and said. The measure is
/// the median distance from the median over all faces of an instrument (Hampel's identifier), so that a bad reading
/// cannot hide itself.
/// </summary>
internal static class RepeatOutliers
{
    /// <summary>How many standard deviations from the median of its face a reading may lie.</summary>
    private const double Limit = 4.5;

    /// <summary>Median distance times this is the standard deviation of a normal (Hampel, 1974).</summary>
    private const double MedianToDeviation = 1.4826;

    /// <summary>With fewer repeats nothing says which one is wrong.</summary>
    private const int Fewest = 3;

    internal static IReadOnlyList<Finding> Find(ReadingSet set, HashSet<Reading> aside)
    {
        var findings = new List<Finding>();
        foreach (
            IGrouping<string, Reading> all in set
                .Readings.Where(r => r.Kind == ReadingKind.Size && !aside.Contains(r))
                .GroupBy(r => r.Instrument)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
        )
        {
            Reading[][] faces = all.GroupBy(r => (string)r.Feature)
                .Where(g => g.Count() >= Fewest)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => g.ToArray())
                .ToArray();
            double s = Deviation(faces, set.InstrumentOf(all.Key));
            foreach (Reading[] face in faces)
                if (Worst(face, s) is { } odd)
                {
                    findings.Add(Say(odd, face));
                    aside.Add(odd);
                }
        }
        return findings;
    }

    private static double Deviation(Reading[][] faces, Instrument instrument)
    {
        double known = instrument.Repeatability ?? Instrument.DefaultRepeatability;
        double[] distances = faces.SelectMany(DistancesFromMiddle).ToArray();
        return Math.Max(known, distances.Length > 0 ? MedianToDeviation * Median(distances) : 0);
    }

    private static IEnumerable<double> DistancesFromMiddle(Reading[] face)
    {
        double middle = Median(face);
        return face.Select(r => Math.Abs(r.Value - middle));
    }

    private static Reading? Worst(Reading[] face, double s)
    {
        double middle = Median(face);
        Reading worst = face.MaxBy(r => Math.Abs(r.Value - middle))!;
        return Math.Abs(worst.Value - middle) > Limit * s ? worst : null;
    }

    private static double Median(Reading[] face) => Median(face.Select(r => r.Value).ToArray());

    private static double Median(double[] values)
    {
        double[] sorted = values.Order().ToArray();
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    private static Finding Say(Reading odd, Reading[] face) =>
        new(
            "repeat-odd",
            Severity.Warning,
            odd.Feature,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{odd.At}{odd.Value:0.000} mm lies "
                    + $"{odd.Value - Median(face):+0.000;-0.000} mm from the middle of {face.Length} repeats; it was set aside."
            ),
            "Read the face once more; look for a tilted jaw or a digit misread."
        )
        {
            Value = odd.Value,
            Limit = Median(face),
            Unit = "mm",
        };
}
