using System.Text;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Tuning;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Pictures.Tests.Tuning;

public class ExposurePictureTests
{
    [Fact]
    public void ClearanceTrialsTargetAndRecommendationAreDrawn()
    {
        TuningResult result = Tuner.Run([Trial(2.5, 0.5, 0.014), Trial(2.2, 1.6, 0.004), Trial(2.2, 1.6, 0.002)]);
        string svg = Svg(ExposurePlot.Draw(result));
        foreach (
            string text in new[]
            {
                "Clearance per side to expect, mm",
                "rest before exposure, s",
                "exposure, s",
                "target, 68 %",
                "on target (0.050)",
                "trials, 68 %",
                "next",
                "0.04",
                "0.06",
            }
        )
            Assert.Contains($">{text}<", svg, StringComparison.Ordinal);
        // Trials are numbered; two prints with the same settings share a point.
        Assert.Contains(">1<", svg, StringComparison.Ordinal);
        Assert.Contains(">2, 3<", svg, StringComparison.Ordinal);
        using var png = new MemoryStream();
        ExposurePlot.Draw(result).WritePng(png);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], png.ToArray()[..4]);
    }

    /// <summary>What was set and read stands in the order of printing, and what is advised after it.</summary>
    [Fact]
    public void TheHistoryShowsEveryTrialAndTheNext()
    {
        TuningResult result = Tuner.Run([
            Trial(2.5, 0.5, 0.014),
            Trial(2.2, 1.6, 0.004) with
            {
                GrowthY = null,
            },
            Trial(2.2, 1.6, 0.002),
        ]);
        Drawing drawing = HistoryPlot.Draw(result);
        string svg = Svg(drawing);
        foreach (
            string text in new[]
            {
                "What was set; the last is what comes next",
                "Growth that was read, 95 % without what the instrument shares",
                "exposure",
                "rest",
                "next",
                "wanted",
                "X",
                "Y",
            }
        )
            Assert.Contains($">{text}<", svg, StringComparison.Ordinal);
        // Three trials twice above, two points for the next; X three times and Y twice below; five in the legends.
        Assert.Equal(3 * 2 + 2 + 3 + 2 + 5, svg.Split("<circle").Length - 1);
        Assert.Equal(svg, Svg(HistoryPlot.Draw(result)));
    }

    [Fact]
    public void SurvivalIsDrawnWithItsIntervalAndNeedsColumns()
    {
        Trial bare = Trial(2.5, 0.5, 0.01);
        ColumnOutcome[] columns = new[] { 0.25, 0.3, 0.4, 0.5, 0.6 }
            .Select(d => new ColumnOutcome(d, d < 0.4 ? ColumnStage.Lost : ColumnStage.Cure, "", 1.6))
            .ToArray();
        string svg = Svg(ColumnPlot.Draw(Tuner.Run([bare with { Columns = columns }])));
        foreach (
            string text in new[]
            {
                "Columns at 2.5 s exposure, 0.5 s rest",
                "column diameter, mm",
                "95 %",
                "fitted",
                "d50, 95 %",
                "last trial",
                "0.30",
                "0.50",
            }
        )
            Assert.Contains($">{text}<", svg, StringComparison.Ordinal);
        Assert.Throws<InputException>(() => ColumnPlot.Draw(Tuner.Run([bare])));
    }

    private static Trial Trial(double time, double rest, double growth) =>
        new(new ExposureSettings(time, rest), new TrialConditions(0.05))
        {
            GrowthX = new GrowthReading(growth, 0.002),
            GrowthY = new GrowthReading(growth, 0.002),
            Joints = [new JointOutcome("joint1", 0.05)],
        };

    private static string Svg(Drawing drawing)
    {
        using var stream = new MemoryStream();
        drawing.WriteSvg(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
