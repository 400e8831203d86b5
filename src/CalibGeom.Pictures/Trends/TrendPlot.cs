using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Pictures.Trends;

/// <summary>Coupons over time: a panel for each gauge, and the evidence of a change below.</summary>
public static class TrendPlot
{
    private const double Width = 760,
        PanelHeight = 240;

    /// <summary>Draws it.</summary>
    /// <param name="answer">What a log says.</param>
    public static Drawing Draw(TrendAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        TrendResult result = answer.Result;
        Gauge[] gauges = result.Points.SelectMany(p => p.Values).Select(v => v.Gauge).Distinct().Order().ToArray();
        var drawing = new Drawing(Width, PanelHeight * (gauges.Length + 1) + 16, "Coupons over time");
        Axis time = Axis.Around(
            result.Dated ? "days since the first coupon" : "coupon",
            result.Times.Append(result.Times[^1] + 1e-6)
        );
        for (int i = 0; i < gauges.Length; i++)
            Panel(drawing, 8 + i * PanelHeight, time, gauges[i], answer);
        Evidence(drawing, 8 + gauges.Length * PanelHeight, time, result);
        return drawing;
    }

    private static void Panel(Drawing drawing, double top, Axis time, Gauge gauge, TrendAnswer answer)
    {
        TrendResult result = answer.Result;
        var values = answer
            .Log.Current.Read.SelectMany(
                (p, n) => p.Values.Where(v => v.Gauge == gauge).Select(v => (Time: result.Times[n], Value: v))
            )
            .ToArray();
        double Show(double value) => gauge == Gauge.Columns ? Math.Exp(value) : value;
        double Error(GaugeValue v) =>
            gauge switch
            {
                Gauge.Growth => Math.Sqrt(v.Uncertainty * v.Uncertainty + Squared(result.Options.BetweenPrints)),
                Gauge.PrintThrough => Math.Sqrt(
                    v.Uncertainty * v.Uncertainty + Squared(result.Options.BetweenThroughs)
                ),
                _ => v.Uncertainty * Math.Exp(v.Value),
            };
        var plot = new PlotArea(
            drawing,
            8,
            top,
            Width - 16,
            PanelHeight,
            time,
            Axis.Around(
                Label(gauge),
                values.SelectMany(v =>
                    new[] { Show(v.Value.Value) - Error(v.Value), Show(v.Value.Value) + Error(v.Value) }
                )
            )
        )
        {
            Title = Title(gauge),
        };
        Since(plot, result);
        Ink[] inks = [Ink.Blue, Ink.Ochre, Ink.Plum, Ink.Teal];
        string[] series = values.Select(v => v.Value.Series).Distinct(StringComparer.Ordinal).ToArray();
        for (int i = 0; i < series.Length; i++)
        {
            var own = values.Where(v => v.Value.Series == series[i]).ToArray();
            string name = series[i].Split('|')[0];
            bool named = gauge == Gauge.Growth && series.Take(i).All(s => s.Split('|')[0] != name);
            plot.Line(
                own.Select(v => new Vector2D(v.Time, Show(v.Value.Value))),
                new Pen(inks[i % inks.Length].WithOpacity(0.4))
            );
            plot.Points(
                own.Select(v => new PlotPoint(v.Time, Show(v.Value.Value), Error(v.Value))),
                inks[i % inks.Length],
                named ? name : null
            );
        }
        plot.Finish();
    }

    /// <summary>The span in which a change began, where one is told.</summary>
    private static void Since(PlotArea plot, TrendResult result)
    {
        if (result.Change is not { } change || result.Verdict == TrendVerdict.NotEnoughData)
            return;
        plot.Band(
            [
                new(change.Since.Low, plot.Vertical.Min, plot.Vertical.Max),
                new(Math.Max(change.Since.High, change.Since.Low + 1e-6), plot.Vertical.Min, plot.Vertical.Max),
            ],
            Ink.Stone.WithOpacity(0.3),
            "began, 95 %"
        );
    }

    private static void Evidence(Drawing drawing, double top, Axis time, TrendResult result)
    {
        double[] shown = result.Evidence.Select(e => Math.Clamp(e, 1e-3, 1e3)).ToArray();
        var plot = new PlotArea(
            drawing,
            8,
            top,
            Width - 16,
            PanelHeight,
            time,
            new Axis("evidence", Math.Min(0.05, shown.Min() / 1.3), Math.Max(5, shown.Max() * 1.3), logarithmic: true)
        )
        {
            Title = "Evidence of a change; above 1 it is said",
        };
        plot.Line([(time.Min, 1), (time.Max, 1)], new Pen(Ink.Plum, 1.3, 4));
        plot.Line(shown.Select((e, n) => new Vector2D(result.Times[n], e)), new Pen(Ink.Teal, 2));
        plot.Points(shown.Select((e, n) => new PlotPoint(result.Times[n], e)), Ink.Teal);
        plot.Finish();
    }

    private static string Label(Gauge gauge) =>
        gauge switch
        {
            Gauge.Growth => "growth, mm",
            Gauge.PrintThrough => "print-through, mm",
            _ => "column limit, mm",
        };

    private static string Title(Gauge gauge) =>
        gauge switch
        {
            Gauge.Growth => "Growth per edge, one standard deviation",
            Gauge.PrintThrough => "Print-through, one standard deviation",
            _ => "Thinnest column, one standard deviation",
        };

    private static double Squared(double x) => x * x;
}
