using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Maps;

/// <summary>How even the light is over the plate, from coupons of one print.</summary>
public static class LightMap
{
    // How many readings' worth the stated uncertainties count against the scatter that is seen, as in trends.
    private const double Trust = 8;
    private const double Doubt = 0.05;
    private const int LeastForBowl = 5;

    /// <summary>Judges a print.</summary>
    /// <param name="points">At least three coupons at different places, not on one line; five or more to tell a bowl.</param>
    /// <param name="options">The plate; null for the defaults.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">There are fewer, one is off the plate, they stand on one line, or their readings
    /// cannot be compared.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static MapResult Run(
        IReadOnlyList<MapPoint> points,
        MapOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(points);
        options ??= MapOptions.Default;
        cancellation.ThrowIfCancellationRequested();
        int places = PlaceRules.Of(points, options).Count;
        Surface even =
            Surface.Fit(SurfaceShape.Even, points, options)
            ?? throw new InputException(
                InputIds.Question,
                "The coupons share no reading that could be compared. Read the same features of each with one caliper."
            );
        Surface plane =
            Surface.Fit(SurfaceShape.Plane, points, options)
            ?? throw new InputException(
                InputIds.Question,
                "The coupons share too few readings to tell light from side to side of the plate. Read the same features of "
                    + "each with one caliper."
            );
        // Four places let a bowl through whatever they read: nothing would be left over to doubt it.
        Surface? bowl = places < LeastForBowl ? null : Surface.Fit(SurfaceShape.Bowl, points, options);
        Told(0.3);
        (double squares, int freedom) = Saturated(points, options);
        Told(0.6);
        NestedTest? any = even.Freedom > freedom ? Test(even.Squares, squares, even.Freedom - freedom, freedom) : null;
        NestedTest ofPlane = Test(even.Squares, plane.Squares, 2, plane.Freedom);
        NestedTest? ofBowl = bowl is null ? null : Test(plane.Squares, bowl.Squares, 1, bowl.Freedom);
        NestedTest? bowlAtAll = bowl is null ? null : Test(even.Squares, bowl.Squares, 3, bowl.Freedom);
        double[] chances = new[] { any, ofPlane, bowlAtAll }.OfType<NestedTest>().Select(t => t.Probability).ToArray();
        double probability = Together(chances);
        bool differs = probability < Doubt;
        Surface chosen = Scaled(differs && ofBowl?.Probability < Doubt && bowl is not null ? bowl : plane);
        double[] mean = chosen.Mean(points.Select(p => (p.X, p.Y)));
        var light = new FittedLight(differs ? chosen : even, chosen, mean);
        (double change, double share, PlatePart? part) = differs
            ? OneExposure.For(chosen, mean, options)
            : (0, 1, null);
        IReadOnlyList<WeakPlace> weakest = differs
            ? WeakestPlaces.Of(
                PossibleLight.Of(LightEvidence.Of(points, options), Trust),
                chosen,
                options,
                cancellation
            )
            : [];
        Told(0.7);
        var result = new MapResult(light)
        {
            Places = points.Select(p => Place(p, points, light, options)).ToArray(),
            Probability = probability,
            AnyDifference = any,
            Plane = ofPlane,
            Bowl = ofBowl,
            WeakestPlaces = weakest,
            ExposureChange = change,
            WithinShare = share,
            Within = part,
            Level = LevelOf(points, options),
            Options = options,
        };
        progress?.Report(1);
        return result;

        void Told(double share)
        {
            progress?.Report(share);
            cancellation.ThrowIfCancellationRequested();
        }
    }

    private static NestedTest Test(double squares, double left, int freedom, int leftFreedom) =>
        NestedTest.Of(squares + Trust, left + Trust, freedom, leftFreedom + Trust);

    /// <summary>
    /// One probability of several tests of the same readings, however they hang together: the mean of their Cauchy
    /// scores (Liu and Xie, Journal of the American Statistical Association 115 (2020) 393). The least of them times
    /// their number would waste what they share.
    /// </summary>
    internal static double Together(IReadOnlyList<double> probabilities)
    {
        if (probabilities.Count == 0)
            return 1;
        // Near 1 a test says nothing, and its score would outweigh what the others say.
        double score = probabilities.Average(p => Math.Tan((0.5 - Math.Clamp(p, 1e-15, 0.99)) * Math.PI));
        return 0.5 - Math.Atan(score) / Math.PI;
    }

    private static Surface Scaled(Surface s)
    {
        double factor = (Trust + s.Squares) / (Trust + s.Freedom);
        return s.With(factor);
    }

    /// <summary>What is left when every coupon may have any light of its own.</summary>
    private static (double Squares, int Freedom) Saturated(IReadOnlyList<MapPoint> points, MapOptions options)
    {
        MapPoint[] read = points.Where(p => p.Values.Count > 0).ToArray();
        var series = read.SelectMany(p => p.Values).Select(v => $"{v.Gauge}|{v.Series}").Distinct().ToArray();
        int rows = read.Sum(p => p.Values.Count);
        // With one series every coupon is met exactly.
        if (series.Length == 1)
            return (0, 0);
        double[,] design = new double[rows, series.Length + read.Length - 1];
        var observed = new double[rows];
        int i = 0;
        for (int n = 0; n < read.Length; n++)
            foreach (GaugeValue v in read[n].Values)
            {
                design[i, Array.IndexOf(series, $"{v.Gauge}|{v.Series}")] = 1 / v.Uncertainty;
                if (n > 0)
                    design[i, series.Length + n - 1] = Surface.Response(v.Gauge, options) / v.Uncertainty;
                observed[i++] = v.Value / v.Uncertainty;
            }
        if (rows <= series.Length + read.Length - 1)
            return (0, 0);
        try
        {
            LeastSquares fit = LeastSquares.Ordinary(design, observed);
            return (fit.SumOfSquares, fit.DegreesOfFreedom);
        }
        catch (ArgumentException)
        {
            // Coupons that share no series with others: nothing is left over to compare.
            return (0, 0);
        }
    }

    private static PlacedLight Place(MapPoint point, IReadOnlyList<MapPoint> all, FittedLight light, MapOptions options)
    {
        double weight = 0,
            sum = 0;
        foreach (GaugeValue v in point.Values)
        {
            double[] others = all.SelectMany(p => p.Values)
                .Where(w => w.Gauge == v.Gauge && w.Series == v.Series)
                .Select(w => w.Value)
                .ToArray();
            if (others.Length < 2)
                continue;
            double answer = Surface.Response(v.Gauge, options),
                information = answer * answer / (v.Uncertainty * v.Uncertainty);
            weight += information;
            sum += information * (v.Value - others.Average()) / answer;
        }
        double own = weight > 0 ? Coverage.NormalFactor / Math.Sqrt(weight) : 0;
        return new PlacedLight(
            point,
            weight > 0 ? new Amount(sum / weight, sum / weight - own, sum / weight + own) : null,
            light.At(point.X, point.Y)
        );
    }

    private static PlateLevel? LevelOf(IReadOnlyList<MapPoint> points, MapOptions options)
    {
        MapPoint[] read = points.Where(p => p.Thickness is not null).ToArray();
        if (read.Length < 4)
            return null;
        double[,] design = new double[read.Length, 3];
        for (int i = 0; i < read.Length; i++)
            (design[i, 0], design[i, 1], design[i, 2]) = (1, read[i].X / options.Width, read[i].Y / options.Depth);
        double u = read.Average(p => p.ThicknessUncertainty);
        double[] observed = read.Select(p => p.Thickness!.Value / u).ToArray();
        try
        {
            LeastSquares fit = LeastSquares.Ordinary(design, observed);
            double mean = observed.Average();
            double squares = observed.Sum(o => (o - mean) * (o - mean));
            return new PlateLevel(
                Test(squares, fit.SumOfSquares, 2, fit.DegreesOfFreedom),
                fit.Coefficients[1] * u,
                fit.Coefficients[2] * u
            );
        }
        catch (ArgumentException)
        {
            return null; // All on one line: a plane cannot be told.
        }
    }
}
