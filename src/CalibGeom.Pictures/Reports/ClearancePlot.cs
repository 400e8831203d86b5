using CalibGeom.Pictures.Drawings;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Pictures.Reports;

/// <summary>
/// The clearance to expect in each joint and axis with its 95 % interval, over the designed one and the felt fits.
/// Drawn by own code: rows that carry names, and bands that carry words, are no plot of numbers over numbers.
/// </summary>
public static class ClearancePlot
{
    private const double Width = 760,
        Left = 110,
        Right = 30,
        Row = 34,
        Top = 62,
        Bottom = 46;

    /// <summary>Draws it.</summary>
    /// <param name="prediction">What readings say.</param>
    /// <exception cref="InputException">The object has no joint along a measured axis.</exception>
    public static Drawing Draw(ClearancePrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        AxisClearance[] all = [.. prediction.Joints.SelectMany(j => j.Axes)];
        if (all.Length == 0)
            throw new InputException(
                InputIds.Question,
                "The object has no joint along a measured axis, so there is no clearance to draw."
            );
        FitThresholds fits = prediction.Options.Thresholds;
        double low = Math.Min(fits.Binds - 0.03, all.Min(c => Math.Min(c.Clearance.Interval.Low, c.Design)) - 0.01),
            high = Math.Max(fits.Rattles + 0.03, all.Max(c => Math.Max(c.Clearance.Interval.High, c.Design)) + 0.01),
            bottom = Top + Row * all.Length;
        var drawing = new Drawing(Width, bottom + Bottom, "Clearance to expect per side, with its 95 % interval");
        double X(double clearance) => Left + (clearance - low) / (high - low) * (Width - Left - Right);
        drawing.Text(8, 20, "Clearance to expect per side, mm", new TextStyle(14, Bold: true));
        (string Word, double From, double To)[] bands =
        [
            ("refuses", low, fits.Binds),
            ("binds", fits.Binds, fits.Slides),
            ("slides", fits.Slides, fits.Rattles),
            ("rattles", fits.Rattles, high),
        ];
        for (int i = 0; i < bands.Length; i++)
        {
            (string word, double from, double to) = bands[i];
            drawing.Rectangle(
                X(from),
                Top,
                X(to) - X(from),
                bottom - Top,
                Ink.Stone.WithOpacity(i % 2 == 0 ? 0.28 : 0.1)
            );
            if (X(to) - X(from) > TextFont.Width(word, new TextStyle(11)) + 4)
                drawing.Text(
                    (X(from) + X(to)) / 2,
                    Top - 8,
                    word,
                    new TextStyle(11, TextAnchor.Middle) { Ink = Ink.Muted }
                );
        }
        double step =
            high - low > 0.4 ? 0.1
            : high - low > 0.18 ? 0.05
            : 0.02;
        for (double tick = Math.Ceiling(low / step) * step; tick <= high; tick += step)
        {
            drawing.Line(X(tick), bottom, X(tick), bottom + 5, new Pen(Ink.Muted));
            drawing.Text(
                X(tick),
                bottom + 19,
                FormattableString.Invariant($"{Math.Round(tick, 3) + 0.0:0.00}"),
                new TextStyle(11, TextAnchor.Middle) { Ink = Ink.Muted }
            );
        }
        drawing.Text(
            Left,
            bottom + 38,
            "bar: 95 % interval; dot: expected; upright line: as designed",
            new TextStyle(11) { Ink = Ink.Muted }
        );
        for (int i = 0; i < all.Length; i++)
            DrawRow(drawing, all[i], Top + Row * (i + 0.5), X);
        return drawing;
    }

    private static void DrawRow(Drawing drawing, AxisClearance c, double y, Func<double, double> x)
    {
        drawing.Text(
            Left - 10,
            y + 4,
            $"{c.Fit.Spoken}, {c.Axis.ToUpperInvariant()}",
            new TextStyle(12, TextAnchor.End)
        );
        drawing.Line(x(c.Design), y - 12, x(c.Design), y + 12, new Pen(Ink.Ochre, 2));
        drawing.Line(x(c.Clearance.Interval.Low), y, x(c.Clearance.Interval.High), y, new Pen(Ink.Blue, 5));
        drawing.Disc(x(c.Clearance.Value), y, 5.5, Ink.Blue, new Pen(Ink.Paper, 1.5));
    }
}
