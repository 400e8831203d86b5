using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Pictures.Tuning;

/// <summary>
/// Clearance over rest and exposure, with the curve that holds the target, the trials and the recommendation.
/// </summary>
public static class ExposurePlot
{
    private const int Columns = 49,
        Rows = 49;

    /// <summary>Draws it.</summary>
    /// <param name="result">What the trials say.</param>
    public static Drawing Draw(TuningResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var drawing = new Drawing(760, 500, "Clearance over rest and exposure");
        double[] times =
        [
            .. result.Trials.Select(t => t.Settings.Time),
            result.Next.Settings.Time,
            .. result.Curve.Select(p => p.Time),
        ];
        double low = times.Min() / 1.25,
            high = Math.Min(Math.Min(times.Max(), 4 * times.Min()) * 1.25, ExposureSettings.Longest),
            rest = result.Options.MostRest;
        var plot = new PlotArea(
            drawing,
            8,
            8,
            744,
            484,
            new Axis("rest before exposure, s", -0.25, rest + 0.25),
            new Axis("exposure, s", low, high, logarithmic: true)
        )
        {
            Title = "Clearance per side to expect, mm",
        };
        plot.Band(
            result.Curve.Select(p => new BandPoint(
                p.Rest,
                Math.Clamp(OneDeviation(p.Time, p.Low), low, high),
                Math.Clamp(OneDeviation(p.Time, p.High), low, high)
            )),
            Ink.Teal.WithOpacity(0.15),
            "target, 68 %"
        );
        Contours(plot, result, low, high, rest);
        plot.Line(
            result.Curve.Select(p => new Vector2D(p.Rest, p.Time)),
            new Pen(Ink.Teal, 2.5),
            FormattableString.Invariant($"on target ({Target(result):0.000})")
        );
        plot.Points([new(result.Next.Settings.Rest, result.Next.Settings.Time)], Ink.Ochre, "next", 8);
        plot.Points(
            result.Trials.Select(t => new PlotPoint(t.Settings.Rest, t.Settings.Time, Error(result, t))),
            Ink.Blue,
            "trials, 68 %"
        );
        Numbers(plot, result);
        plot.Finish();
        return drawing;
    }

    // An object without boxes has no clearance: what growth alone would make of a gap of nothing is drawn.
    private static double Target(TuningResult result) =>
        result.Clearances.Count > 0 ? result.Clearances[0].Target : -2 * result.TargetGrowth;

    // Beside its point, in the order of printing.
    private static void Numbers(PlotArea plot, TuningResult result)
    {
        foreach (
            var group in result
                .Trials.Select((t, i) => (t.Settings, Number: i + 1))
                .GroupBy(t => (Wait: t.Settings.Rest, t.Settings.Time))
        )
            plot.Note(
                group.Key.Wait + 0.06,
                group.Key.Time * 1.025,
                string.Join(", ", group.Select(t => t.Number)),
                new TextStyle(12, Bold: true) { Ink = Ink.Blue }
            );
    }

    // The ends of a 95 % interval lie so many deviations away on the logarithmic scale.
    private static double OneDeviation(double middle, double end) =>
        middle * Math.Pow(end / middle, 1 / Coverage.NormalFactor);

    private static void Contours(PlotArea plot, TuningResult result, double low, double high, double rest)
    {
        double[] xs = Enumerable.Range(0, Columns).Select(i => rest * i / (Columns - 1)).ToArray();
        double[] ys = Enumerable
            .Range(0, Rows)
            .Select(i => Math.Min(high, low * Math.Pow(high / low, i / (Rows - 1.0))))
            .ToArray();
        var field = new double[Rows, Columns];
        double designed = Target(result) + 2 * result.TargetGrowth,
            offset = result.Next.Settings.EdgeOffset;
        for (int r = 0; r < Rows; r++)
        for (int c = 0; c < Columns; c++)
            field[r, c] = designed - 2 * result.Response.At(new ExposureSettings(ys[r], xs[c], offset)).Mean;
        double least = field.Cast<double>().Min(),
            most = field.Cast<double>().Max();
        for (double level = Math.Ceiling(least / 0.01) * 0.01; level <= most; level += 0.01)
            if (Math.Abs(level - Target(result)) > 0.002)
                plot.Contour(
                    xs,
                    ys,
                    field,
                    level,
                    new Pen(Ink.Muted.WithOpacity(0.7)),
                    FormattableString.Invariant($"{level + 1e-12:0.00}")
                );
    }

    // The vertical half-width of a trial in exposure: its growth's standard uncertainty over the slope.
    private static double Error(TuningResult result, Trial trial)
    {
        double u = Math.Min(trial.GrowthX?.Uncertainty ?? 0.02, trial.GrowthY?.Uncertainty ?? 0.02),
            between = result.Response.BetweenPrints;
        return trial.Settings.Time * Math.Min(0.6, Math.Sqrt(u * u + between * between) / result.Response.TimeEffect);
    }
}
