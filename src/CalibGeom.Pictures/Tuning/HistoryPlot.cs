using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Pictures.Tuning;

/// <summary>
/// The trials in their order: above what was set and what is advised next, below the growth that was read.
/// </summary>
public static class HistoryPlot
{
    private const double Width = 760,
        PanelHeight = 240;

    /// <summary>Draws it.</summary>
    /// <param name="result">What the trials say.</param>
    public static Drawing Draw(TuningResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var drawing = new Drawing(Width, 2 * PanelHeight + 16, "History of the trials");
        var trial = new Axis("trial", 0.5, result.Trials.Count + 1.5);
        Settings(drawing, trial, result);
        Growths(drawing, trial, result);
        return drawing;
    }

    private static void Settings(Drawing drawing, Axis trial, TuningResult result)
    {
        ExposureSettings[] all = [.. result.Trials.Select(t => t.Settings), result.Next.Settings];
        var plot = new PlotArea(
            drawing,
            8,
            8,
            Width - 16,
            PanelHeight,
            trial,
            Axis.Around("s", all.SelectMany(s => new[] { s.Time, s.Rest }))
        )
        {
            Title = "What was set; the last is what comes next",
        };
        foreach (
            (Func<ExposureSettings, double> get, Ink ink, string name) in new (
                Func<ExposureSettings, double>,
                Ink,
                string
            )[]
            {
                (s => s.Time, Ink.Blue, "exposure"),
                (s => s.Rest, Ink.Ochre, "rest"),
            }
        )
        {
            plot.Line(all.Select((s, i) => new Vector2D(i + 1.0, get(s))), new Pen(ink.WithOpacity(0.4)));
            plot.Points(all.SkipLast(1).Select((s, i) => new PlotPoint(i + 1.0, get(s))), ink, name);
        }
        plot.Points([new(all.Length, all[^1].Time), new(all.Length, all[^1].Rest)], Ink.Teal, "next", radius: 5);
        plot.Finish();
    }

    private static void Growths(Drawing drawing, Axis trial, TuningResult result)
    {
        PlotPoint[] Of(Func<Trial, GrowthReading?> get, double aside) =>
            [
                .. result
                    .Trials.Index()
                    .Where(t => get(t.Item) is not null)
                    .Select(t => new PlotPoint(
                        t.Index + 1 + aside,
                        get(t.Item)!.Value,
                        Coverage.NormalFactor * get(t.Item)!.Uncertainty
                    )),
            ];
        // Side by side, so that neither bar hides the other.
        var x = Of(t => t.GrowthX, -0.06);
        var y = Of(t => t.GrowthY, 0.06);
        var plot = new PlotArea(
            drawing,
            8,
            8 + PanelHeight,
            Width - 16,
            PanelHeight,
            trial,
            Axis.Around(
                "growth per edge, mm",
                x.Concat(y).SelectMany(g => new[] { g.Y - g.Error, g.Y + g.Error }).Append(result.TargetGrowth)
            )
        )
        {
            Title = "Growth that was read, 95 % without what the instrument shares",
        };
        plot.Line(
            [(trial.Min, result.TargetGrowth), (trial.Max, result.TargetGrowth)],
            new Pen(Ink.Plum, 1.3, 4),
            "wanted"
        );
        plot.Points(x, Ink.Blue, "X");
        plot.Points(y, Ink.Ochre, "Y");
        plot.Finish();
    }
}
