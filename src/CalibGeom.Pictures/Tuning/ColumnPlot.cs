using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Pictures.Tuning;

/// <summary>
/// Survival of columns over diameter, with its interval and what became of the columns of the last trial.
/// </summary>
public static class ColumnPlot
{
    /// <summary>Draws it.</summary>
    /// <param name="result">What the trials say.</param>
    /// <exception cref="InputException">No trial has columns.</exception>
    public static Drawing Draw(TuningResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Columns is not { } survival)
            throw new InputException(
                InputIds.Question,
                "No trial has columns of different diameters, so there is nothing to draw. Log how far each "
                    + "column stood."
            );
        Trial last = result.Trials.Last(t => t.Columns.Count > 0);
        double low = survival.Thinnest / 1.15,
            high = survival.Thickest * 1.1;
        var drawing = new Drawing(760, 460, "Survival of columns");
        var plot = new PlotArea(
            drawing,
            8,
            8,
            744,
            444,
            new Axis("column diameter, mm", low, high, logarithmic: true),
            new Axis("share that comes off the plate whole", -0.04, 1.04)
        )
        {
            Title = FormattableString.Invariant($"Columns at {last.Settings}"),
        };
        double[] diameters = Enumerable.Range(0, 121).Select(i => low * Math.Pow(high / low, i / 120.0)).ToArray();
        plot.Band(
            diameters.Select(d => new BandPoint(
                d,
                survival.ProbabilityInterval(d).Low,
                survival.ProbabilityInterval(d).High
            )),
            Ink.Blue.WithOpacity(0.15),
            "95 %"
        );
        plot.Line(
            diameters.Select(d => new Vector2D(d, survival.Probability(d, last.Settings.Time))),
            new Pen(Ink.Blue, 2.5),
            "fitted"
        );
        ColumnLimit limit = survival.Limit(last.Settings.Time);
        double left = Math.Max(limit.Low, low),
            right = Math.Min(limit.High, high);
        if (left < right)
            plot.Line([(left, 0.5), (right, 0.5)], new Pen(Ink.Teal, 3), "d50, 95 %");
        if (limit.Diameter is { } half)
            plot.Points([new(half, 0.5)], Ink.Teal, radius: 5);
        plot.Points(
            last.Columns.GroupBy(c => c.Diameter)
                .Select(g => new PlotPoint(g.Key, g.Count(c => c.Printed) / (double)g.Count())),
            Ink.Ochre,
            "last trial"
        );
        plot.Finish();
        return drawing;
    }
}
