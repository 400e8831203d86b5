using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using FsCheck.Xunit;

namespace CalibGeom.Pictures.Tests.Plots;

public class PlotTests
{
    [Property(MaxTest = 200)]
    public void TicksLieInsideTheRangeAndRise(FsCheck.NormalFloat from, FsCheck.NormalFloat length)
    {
        double min = from.Get % 1000,
            max = min + Math.Max(1e-3, Math.Abs(length.Get % 1000));
        var axis = new Axis("a", min, max);
        var ticks = axis.Ticks();
        Assert.InRange(ticks.Count, 2, 12);
        Assert.All(ticks, t => Assert.InRange(axis.Fraction(t.Value), -1e-6, 1 + 1e-6));
        Assert.True(ticks.Zip(ticks.Skip(1)).All(p => p.First.Value < p.Second.Value));
        Assert.Equal(ticks.Count, ticks.Select(t => t.Text).Distinct().Count());
    }

    [Fact]
    public void TicksAreRoundNumbers()
    {
        Assert.Equal(
            ["0.00", "0.05", "0.10", "0.15", "0.20"],
            new Axis("a", 0, 0.22, false).Ticks(5).Select(t => t.Text)
        );
        Assert.Equal(["0.5", "1", "2", "5", "10", "20"], new Axis("a", 0.5, 30, true).Ticks().Select(t => t.Text));
        Assert.Equal(
            ["0.001", "0.01", "0.1", "1", "10", "100", "1000"],
            new Axis("a", 0.001, 1000, true).Ticks().Select(t => t.Text)
        );
    }

    [Theory]
    [InlineData(1, 1, false)]
    [InlineData(double.NaN, 1, false)]
    [InlineData(0, 1, true)]
    public void ImpossibleAxesAreRefused(double min, double max, bool logarithmic) =>
        Assert.Throws<ArgumentException>(() => new Axis("a", min, max, logarithmic));

    [Fact]
    public void AnAxisAroundValuesShowsThemAll()
    {
        var axis = Axis.Around("a", [2.0, 7, 3]);
        Assert.True(axis.Min < 2 && axis.Max > 7);
        Assert.Throws<ArgumentException>(() => Axis.Around("a", []));
        Assert.True(Axis.Around("a", [5.0]).Max > 5);
    }

    [Fact]
    public void TheContourOfACircleIsOneClosedLineOnTheCircle()
    {
        double[] xs = Enumerable.Range(0, 61).Select(i => -3 + i * 0.1).ToArray();
        var field = new double[61, 61];
        for (int r = 0; r < 61; r++)
        for (int c = 0; c < 61; c++)
            field[r, c] = xs[c] * xs[c] + xs[r] * xs[r];
        var line = Assert.Single(Contours.Trace(xs, xs, field, 4));
        Assert.Equal(line[0], line[^1]);
        Assert.All(line, p => Assert.InRange(Math.Sqrt(p.X * p.X + p.Y * p.Y), 1.99, 2.01));
    }

    [Fact]
    public void AContourStopsWhereTheFieldIsNotKnown()
    {
        var field = new double[,]
        {
            { 0, 0, double.NaN, 0 },
            { 1, 1, 1, 1 },
        };
        var line = Assert.Single(Contours.Trace([0, 1, 2, 3], [0, 1], field, 0.5));
        Assert.Equal((0.5, 0.5), (line.Min(p => p.Y), line.Max(p => p.Y)));
        Assert.True(line.Max(p => p.X) <= 2);
        Assert.Throws<ArgumentException>(() => Contours.Trace([0, 1], [0, 1], field, 0.5));
    }

    [Fact]
    public void APlotMapsItsCornersToItsFrame()
    {
        var plot = Example(out Drawing drawing);
        (double left, double bottom) = plot.Map(0, 0);
        (double right, double top) = plot.Map(6, 0.1);
        Assert.True(
            0 < left && left < right && right < drawing.Width && 0 < top && top < bottom && bottom < drawing.Height
        );
    }

    [Fact]
    public void APlotIsTheSameEachTime()
    {
        Assert.Equal(Bytes(), Bytes());

        static byte[] Bytes()
        {
            Example(out Drawing drawing);
            using var stream = new MemoryStream();
            drawing.WriteSvg(stream);
            return stream.ToArray();
        }
    }

    private static PlotArea Example(out Drawing drawing)
    {
        drawing = new Drawing(560, 380, "growth against rest");
        var plot = new PlotArea(
            drawing,
            0,
            0,
            560,
            380,
            new Axis("rest time, s", 0, 6),
            new Axis("growth per edge, mm", 0, 0.1)
        )
        {
            Title = "Growth",
        };
        double[] xs = Enumerable.Range(0, 25).Select(i => i * 0.25).ToArray(),
            ys = Enumerable.Range(0, 21).Select(i => i * 0.005).ToArray();
        var field = new double[21, 25];
        for (int r = 0; r < 21; r++)
        for (int c = 0; c < 25; c++)
            field[r, c] = xs[c] / 6 + ys[r] / 0.1;
        plot.Band(
            xs.Select(v => new BandPoint(v, 0.05 * Math.Exp(-v) + 0.01, 0.05 * Math.Exp(-v) + 0.03)),
            Ink.Blue.WithOpacity(0.2),
            "95 %"
        );
        plot.Line(xs.Select(v => new Vector2D(v, 0.05 * Math.Exp(-v) + 0.02)), new Pen(Ink.Blue, 2), "model");
        plot.Contour(xs, ys, field, 1, new Pen(Ink.Plum, 1.2, 4), "1.0");
        plot.Points([new(0.5, 0.055, 0.01), new(2, 0.025, 0.01), new(4, 0.022)], Ink.Ochre, "readings");
        plot.Note(4.2, 0.09, "a note");
        plot.Finish();
        return plot;
    }
}
