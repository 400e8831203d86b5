using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// How well print-through explains the bridges that were read. What a caliper adds to all it reads is one unknown for
/// all its prints, integrated out: it blurs how deep light passes, and not how that answers to exposure.
/// </summary>
internal sealed class BridgeLikelihood
{
    private readonly (int Print, double Value, double Weight)[][] calipers;

    internal BridgeLikelihood(IReadOnlyList<Trial> prints)
    {
        double between = TrendOptions.Default.BetweenThroughs;
        calipers =
        [
            .. prints
                .Select((t, i) => (Read: BridgeReading.Of(t), Print: i))
                .Where(b => b.Read is not null)
                .GroupBy(b => b.Read!.Instrument, StringComparer.Ordinal)
                .Select(g => g.Select(b => (b.Print, b.Read!.Value, Weight(b.Read, between))).ToArray()),
        ];
    }

    /// <summary>Whether a bridge was read.</summary>
    internal bool Any => calipers.Length > 0;

    /// <summary>ln of the likelihood up to a constant.</summary>
    /// <param name="through">Print-through of each print, mm.</param>
    internal double Log(double[] through)
    {
        double sum = 0;
        foreach ((int Print, double Value, double Weight)[] caliper in calipers)
        {
            double weights = 1 / (Instrument.DefaultOutsideError * Instrument.DefaultOutsideError),
                left = 0,
                squares = 0;
            foreach ((int print, double value, double weight) in caliper)
            {
                double off = value - through[print];
                weights += weight;
                left += weight * off;
                squares += weight * off * off;
            }
            sum -= (squares - left * left / weights) / 2;
        }
        return sum;
    }

    private static double Weight(BridgeReading read, double between) =>
        1 / (read.Uncertainty * read.Uncertainty + between * between);
}
