using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Calipers;

/// <summary>What gauges say of one pair of jaws, mm. Immutable.</summary>
public sealed record JawCheck
{
    /// <summary>The jaws.</summary>
    public required Jaw Jaw { get; init; }

    /// <summary>The error that all lengths share: mean of the lengths' mean errors, display less gauge.</summary>
    public required Estimate Constant { get; init; }

    /// <summary>
    /// Largest less smallest mean error of a length, halved: how far the error swings along the scale; null with one
    /// length.
    /// </summary>
    public required double? Swing { get; init; }

    /// <summary>How many lengths were read.</summary>
    public required int Lengths { get; init; }

    /// <summary>On how many days.</summary>
    public required int Days { get; init; }

    /// <summary>Largest less smallest daily mean error; null with one day.</summary>
    public required double? Drift { get; init; }

    internal static JawCheck Of(Jaw jaw, IReadOnlyList<CaliperReading> readings)
    {
        double[] lengths = Means(readings.GroupBy(r => r.Gauge!.Value));
        double[] days = Means(readings.GroupBy(r => r.Date));
        double mean = lengths.Average();
        double spread =
            lengths.Length > 1
                ? Math.Sqrt(lengths.Sum(e => (e - mean) * (e - mean)) / (lengths.Length - 1))
                : Instrument.Caliper.VaryingErrorOf(jaw);
        return new JawCheck
        {
            Jaw = jaw,
            Constant = Estimate.Of(mean, spread / Math.Sqrt(lengths.Length), Math.Max(1, lengths.Length - 1)),
            Swing = lengths.Length > 1 ? (lengths.Max() - lengths.Min()) / 2 : null,
            Lengths = lengths.Length,
            Days = days.Length,
            Drift = days.Length > 1 ? days.Max() - days.Min() : null,
        };
    }

    private static double[] Means<T>(IEnumerable<IGrouping<T, CaliperReading>> groups) =>
        groups.Select(g => g.Average(r => r.Value - r.Gauge!.Value)).ToArray();
}
