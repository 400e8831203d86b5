using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>All readings of one feature with one instrument: their mean and how many.</summary>
internal sealed record ReadingGroup(FeatureId Id, Instrument Instrument, double Mean, int Count, double SumOfSquares)
{
    internal static ReadingGroup Of(FeatureId id, Instrument instrument, IEnumerable<double> values)
    {
        // Ascending, so that the order of the readings cannot change the last bit.
        double[] sorted = values.Order().ToArray();
        double mean = sorted[0] + sorted.Sum(v => v - sorted[0]) / sorted.Length;
        return new ReadingGroup(id, instrument, mean, sorted.Length, sorted.Sum(v => (v - mean) * (v - mean)));
    }
}
