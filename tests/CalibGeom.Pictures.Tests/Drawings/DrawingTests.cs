using System.Text;
using System.Xml.Linq;
using CalibGeom.Pictures.Drawings;
using SkiaSharp;

namespace CalibGeom.Pictures.Tests.Drawings;

public class DrawingTests
{
    [Fact]
    public void TheSameCallsGiveTheSameSvg()
    {
        Assert.Equal(Svg(Sample()), Svg(Sample()));
    }

    [Fact]
    public void SvgIsWellFormedAndKeepsTextAsText()
    {
        XDocument svg = XDocument.Parse(Svg(Sample()));
        Assert.Contains(svg.Descendants(), e => e.Name.LocalName == "text" && e.Value == "holder & <coupon>");
        Assert.Equal("a plate", svg.Root!.Elements().First().Value);
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    public void NumbersDoNotFollowTheCulture(string culture)
    {
        string expected = Svg(Sample());
        var before = Thread.CurrentThread.CurrentCulture;
        try
        {
            Thread.CurrentThread.CurrentCulture = new System.Globalization.CultureInfo(culture);
            Assert.Equal(expected, Svg(Sample()));
        }
        finally
        {
            Thread.CurrentThread.CurrentCulture = before;
        }
    }

    [Fact]
    public void PngShowsFillHoleDiscAndClip()
    {
        using SKBitmap image = Png(Sample());
        Assert.Equal((240, 160), (image.Width, image.Height));
        Assert.Equal(new SKColor(0x2F, 0x5D, 0x8C), image.GetPixel(2 * 12, 2 * 12));
        Assert.Equal(SKColors.White, image.GetPixel(2 * 25, 2 * 25));
        Assert.Equal(new SKColor(0xB5, 0x7F, 0x22), image.GetPixel(2 * 80, 2 * 20));
        Assert.Equal(new SKColor(0x2B, 0x7F, 0x80), image.GetPixel(2 * 102, 2 * 52));
        Assert.Equal(SKColors.White, image.GetPixel(2 * 98, 2 * 52));
    }

    [Fact]
    public void PngTextNeedsNoFontOfTheMachine()
    {
        var drawing = new Drawing(200, 40);
        drawing.Text(5, 28, "micrometre µ Δ", new TextStyle(20));
        using SKBitmap image = Png(drawing);
        int dark = Enumerable
            .Range(0, image.Width * image.Height)
            .Count(i => image.GetPixel(i % image.Width, i / image.Width).Red < 128);
        Assert.InRange(dark, 400, 6000);
        Assert.InRange(TextFont.Width("micrometre", new TextStyle(20)), 90, 140);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(10001)]
    public void ImpossibleSizesAreRefused(double size)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Drawing(size, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Drawing(10, size));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(8.5)]
    [InlineData(double.NaN)]
    public void ImpossibleScalesAreRefused(double scale) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Sample().WritePng(new MemoryStream(), scale));

    [Fact]
    public void TheNameDecidesTheFormat()
    {
        using var svg = new MemoryStream();
        Sample().Write("a.SVG", svg);
        using var png = new MemoryStream();
        Sample().Write("a.png", png);
        Assert.Equal((byte)'<', svg.ToArray()[0]);
        Assert.Equal(0x89, png.ToArray()[0]);
        Assert.Contains(
            "a.jpg",
            Assert.Throws<InputException>(() => Sample().Write("a.jpg", png)).Message,
            StringComparison.Ordinal
        );
    }

    private static Drawing Sample()
    {
        var drawing = new Drawing(120, 80, "a plate");
        drawing.Rings(
            [
                [(10, 10), (40, 10), (40, 40), (10, 40)],
                [(20, 20), (30, 20), (30, 30), (20, 30)],
            ],
            Ink.Blue
        );
        drawing.Disc(80, 20, 8.25, Ink.Ochre);
        drawing.Line(5, 75, 115, 75.5, new Pen(Ink.Muted, 1.5, 4));
        drawing.Text(60, 70, "holder & <coupon>", new TextStyle(11, TextAnchor.Middle, true, 15));
        drawing.Clip(100, 50, 10, 10, d => d.Rectangle(90, 45, 30, 12, Ink.Teal));
        return drawing;
    }

    private static string Svg(Drawing drawing)
    {
        using var stream = new MemoryStream();
        drawing.WriteSvg(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static SKBitmap Png(Drawing drawing)
    {
        using var stream = new MemoryStream();
        drawing.WritePng(stream);
        return SKBitmap.Decode(stream.ToArray());
    }
}
