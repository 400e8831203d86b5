using CalibGeom.Planar;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

public class StrokeFontTests
{
    [Fact]
    public void EveryAllowedCharacterIsDrawn()
    {
        for (char c = '\0'; c < '\u0400'; c++)
            Assert.Equal(
                SpecText.Characters.Contains(c),
                StrokeFont.Has(c) && (char.IsAscii(c) || c is '\u00B5' or '\u03BC')
            );
    }

    // Pieces and enclosed counters, counted by eye.
    [Theory]
    [InlineData("ADOPQR0469#", 1)]
    [InlineData("B8", 2)]
    [InlineData("CEFGHIJKLMNSTUVWXYZ12357+-.,/\u00B5", 0)]
    public void ALetterIsOnePieceWithItsCounters(string letters, int counters)
    {
        foreach (char letter in letters)
        foreach (double stroke in (double[])[0.1, 0.28, 0.4, 0.61, 2])
        {
            Region piece = Assert.Single(StrokeFont.Shape(letter, stroke));
            Assert.True(counters == piece.Holes.Count, $"{letter} at {stroke} has {piece.Holes.Count} counters");
        }
    }

    [Fact]
    public void LettersKeepToTheirCellAndLinesToTheirWidth()
    {
        const double Stroke = 0.4;
        TextBlock[] forms = [.. TextBlock.Breakings("RED 50 \u00B5M / 7:3", new LetterShapes(Stroke))];
        Assert.Equal([1, 2, 3, 4], forms.Select(f => f.Lines.Count));
        foreach (TextBlock form in forms)
        {
            GridPoint[] points = [.. form.Shapes(default).SelectMany(r => r.Outer.Points.ToArray())];
            double overshoot = Stroke * (1 / Math.Cos(Math.PI / 8) - 1);
            Assert.InRange(points.Min(p => p.XMillimetres), -overshoot, 0.1);
            Assert.InRange(points.Min(p => p.YMillimetres), -overshoot, 0.1);
            Assert.InRange(points.Max(p => p.XMillimetres), form.Width - 1.5, form.Width + overshoot);
            Assert.InRange(points.Max(p => p.YMillimetres), form.Height - 0.1, form.Height + overshoot);
        }
    }
}
