using CalibGeom.Verification.Trends;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Maps;

/// <summary>
/// What the readings say of tilts and bowl together, whatever the constant of each series: also where the places tell
/// no bowl. Immutable.
/// </summary>
internal sealed class LightEvidence
{
    private LightEvidence(Matrix<double> information, Vector<double> score, double squares, int freedom)
    {
        (Information, Score) = (information, score);
        (Squares, Freedom) = (squares, freedom);
    }

    /// <summary>The inverse covariance of the terms, as far as the readings know them.</summary>
    internal Matrix<double> Information { get; }

    /// <summary>Information times the terms that fit best.</summary>
    internal Vector<double> Score { get; }

    /// <summary>Sum of the squares that even light leaves, each over its stated uncertainty.</summary>
    internal double Squares { get; }

    /// <summary>Readings less series.</summary>
    internal int Freedom { get; }

    internal static LightEvidence Of(IReadOnlyList<MapPoint> points, MapOptions options)
    {
        var information = Matrix<double>.Build.Dense(Surface.AllTerms, Surface.AllTerms);
        var score = Vector<double>.Build.Dense(Surface.AllTerms);
        double squares = 0;
        int freedom = 0;
        foreach (var series in points.SelectMany(p => p.Values.Select(v => (Point: p, Value: v))).GroupBy(Series))
        {
            var rows = series.Select(r => (Terms: Terms(r.Point, r.Value.Gauge, options), r.Value)).ToArray();
            double weight = rows.Sum(r => Weight(r.Value)),
                middle = rows.Sum(r => Weight(r.Value) * r.Value.Value) / weight;
            Vector<double> mean = rows.Aggregate(score * 0, (sum, r) => sum + Weight(r.Value) * r.Terms) / weight;
            foreach ((Vector<double> terms, GaugeValue value) in rows)
            {
                Vector<double> own = terms - mean;
                double left = value.Value - middle;
                information += Weight(value) * own.OuterProduct(own);
                score += Weight(value) * left * own;
                squares += Weight(value) * left * left;
            }
            freedom += rows.Length - 1;
        }
        return new LightEvidence(information, score, squares, freedom);
    }

    private static string Series((MapPoint Point, GaugeValue Value) row) => Surface.Key(row.Value);

    private static double Weight(GaugeValue value) => 1 / (value.Uncertainty * value.Uncertainty);

    private static Vector<double> Terms(MapPoint point, Gauge gauge, MapOptions options) =>
        Surface.Response(gauge, options) * Vector<double>.Build.Dense(Surface.Terms(point.X, point.Y, options));
}
