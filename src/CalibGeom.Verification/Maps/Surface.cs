using CalibGeom.Verification.Trends;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Maps;

/// <summary>
/// ln(light) over the plate as a shape, fitted to all gauges of all coupons at once: each series has its own constant,
/// each gauge answers in proportion. Lengths are in half diagonals of the plate. Immutable.
/// </summary>
internal sealed class Surface
{
    internal const int AllTerms = 3;

    private readonly Vector<double> coefficients;
    private readonly Matrix<double> covariance;
    private readonly int constants;
    private readonly double half;

    private Surface(
        SurfaceShape shape,
        int constants,
        double half,
        Vector<double> coefficients,
        Matrix<double> covariance
    )
    {
        (Shape, this.constants, this.half) = (shape, constants, half);
        (this.coefficients, this.covariance) = (coefficients, covariance);
    }

    internal SurfaceShape Shape { get; }

    /// <summary>Sum of the squared residuals, each over its stated uncertainty.</summary>
    internal double Squares { get; private init; }

    /// <summary>Readings less coefficients.</summary>
    internal int Freedom { get; private init; }

    /// <summary>Covariances are multiplied by this: stated uncertainties corrected by the scatter seen.</summary>
    internal double Factor { get; init; } = 1;

    private int TermCount => coefficients.Count - constants;

    /// <summary>A fit, or null when the places cannot tell the shape's coefficients.</summary>
    internal static Surface? Fit(SurfaceShape shape, IReadOnlyList<MapPoint> points, MapOptions options)
    {
        var rows = points.SelectMany(p => p.Values.Select(v => (Point: p, Value: v))).ToArray();
        string[] series = rows.Select(r => Key(r.Value)).Distinct(StringComparer.Ordinal).ToArray();
        double half = Half(options);
        int terms = shape switch
        {
            SurfaceShape.Even => 0,
            SurfaceShape.Plane => 2,
            _ => 3,
        };
        int columns = series.Length + terms;
        if (rows.Length < columns || rows.Length == 0)
            return null;
        var design = Matrix<double>.Build.Dense(rows.Length, columns);
        var observed = Vector<double>.Build.Dense(rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            (MapPoint point, GaugeValue value) = rows[i];
            design[i, Array.IndexOf(series, Key(value))] = 1 / value.Uncertainty;
            double answer = Response(value.Gauge, options) / value.Uncertainty;
            double[] basis = Basis(point.X / half, point.Y / half);
            for (int k = 0; k < terms; k++)
                design[i, series.Length + k] = answer * basis[k];
            observed[i] = value.Value / value.Uncertainty;
        }
        var qr = design.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        if (!Uncertainty.LeastSquares.FullRank(Scaled(design)))
            return null;
        Matrix<double> inverse = qr.R.Inverse();
        Vector<double> solved = inverse * (qr.Q.Transpose() * observed);
        Vector<double> left = observed - design * solved;
        return new Surface(shape, series.Length, half, solved, inverse * inverse.Transpose())
        {
            Squares = left.DotProduct(left),
            Freedom = rows.Length - columns,
        };
    }

    /// <summary>ln(light) at a place less its mean over some others.</summary>
    internal double At(double x, double y, double[] mean) => Weights(x, y, mean) * coefficients;

    /// <summary>Its standard uncertainty.</summary>
    internal double Deviation(double x, double y, double[] mean)
    {
        Vector<double> w = Weights(x, y, mean);
        return Math.Sqrt(Math.Max(0, Factor * (w * covariance * w)));
    }

    /// <summary>The mean of the shape's terms over places.</summary>
    internal double[] Mean(IEnumerable<(double X, double Y)> places)
    {
        double[][] all = places.Select(p => Basis(p.X / half, p.Y / half)).ToArray();
        return Enumerable.Range(0, AllTerms).Select(k => all.Average(b => b[k])).ToArray();
    }

    /// <summary>The coefficients of all terms, 0 for those that the shape has not.</summary>
    internal double[] TermValues() =>
        [.. Enumerable.Range(0, AllTerms).Select(k => k < TermCount ? coefficients[constants + k] : 0)];

    /// <summary>The same with its covariance multiplied.</summary>
    internal Surface With(double factor) =>
        new(Shape, constants, half, coefficients, covariance)
        {
            Squares = Squares,
            Freedom = Freedom,
            Factor = factor,
        };

    internal static double Response(Gauge gauge, MapOptions options) =>
        gauge switch
        {
            Gauge.Growth => options.LightEffect.Median,
            Gauge.PrintThrough => options.PenetrationDepth.Median,
            _ => -options.ColumnExponent,
        };

    internal static string Key(GaugeValue value) => $"{value.Gauge}|{value.Series}";

    /// <summary>What each term is at a place: along X, along Y, and round.</summary>
    internal static double[] Terms(double x, double y, MapOptions options) =>
        Basis(x / Half(options), y / Half(options));

    private static double Half(MapOptions options) =>
        Math.Sqrt(options.Width * options.Width + options.Depth * options.Depth) / 2;

    private static double[] Basis(double x, double y) => [x, y, x * x + y * y];

    private Vector<double> Weights(double x, double y, double[] mean)
    {
        var weights = Vector<double>.Build.Dense(coefficients.Count);
        double[] basis = Basis(x / half, y / half);
        for (int k = 0; k < TermCount; k++)
            weights[constants + k] = basis[k] - mean[k];
        return weights;
    }

    private static Matrix<double> Scaled(Matrix<double> design)
    {
        Matrix<double> scaled = design.NormalizeColumns(2);
        return scaled.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).R;
    }
}
