using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>All readings of one feature with one instrument: their mean and how many.</summary>
internal sealed record ReadingGroup(FeatureId Id, Instrument Instrument, double Mean, int Count, double SumOfSquares)
{
    /// <summary>Whether the note said that the jaws stood in the middle, away from corners and their burrs.</summary>
    internal bool Middle { get; init; }

    internal static ReadingGroup Of(
        FeatureId id,
        Instrument instrument,
        IEnumerable<double> values,
        bool middle = false
    )
    {
        // Ascending, so that the order of the readings cannot change the last bit.
        double[] sorted = values.Order().ToArray();
        double mean = sorted[0] + sorted.Sum(v => v - sorted[0]) / sorted.Length;
        return new ReadingGroup(id, instrument, mean, sorted.Length, sorted.Sum(v => (v - mean) * (v - mean)))
        {
            Middle = middle,
        };
    }
}
