using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using CalibGeom.Pictures.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Pictures.Tests.Objects;

public partial class PdfTests
{
    private const double PointsPerMm = 72 / 25.4;

    [Theory]
    [InlineData("a4", 297, 210)]
    [InlineData("letter", 279.4, 215.9)]
    public void ThePageAndTheBarAreTrueToScale(string name, double width, double height)
    {
        TestObject made = TestObject.Of(Presets.Witness);
        using var stream = new MemoryStream();
        ObjectDrawing.Draw(made, "witness", Paper.Parse(name)).WritePdf(stream);
        byte[] pdf = stream.ToArray();
        double[] page =
        [
            .. MediaBox().Match(Encoding.Latin1.GetString(pdf)).Groups[1].Value.Split(' ').Select(SvgSheet.Number),
        ];
        // The graphics library gives a page in whole points.
        Assert.Equal(width * PointsPerMm, page[2], 0.5);
        Assert.Equal(height * PointsPerMm, page[3], 0.5);
        // The bar is the one filled rectangle of its height; the page's matrix scales it.
        string content = Content(pdf);
        double unit = SvgSheet.Number(PageScale().Match(content).Groups[1].Value);
        double[] widths =
        [
            .. Rectangle()
                .Matches(content)
                .Where(m => Math.Abs(Math.Abs(SvgSheet.Number(m.Groups[4].Value)) * unit - 1.2 * PointsPerMm) < 0.02)
                .Select(m => Math.Abs(SvgSheet.Number(m.Groups[3].Value)) * unit / PointsPerMm),
        ];
        Assert.Contains(widths, w => Math.Abs(w - 50) < 0.05);
    }

    [Fact]
    public void TheSameDrawingGivesTheSameBytes()
    {
        TestObject made = TestObject.Of(Presets.Witness);
        byte[][] twice =
        [
            .. Enumerable
                .Range(0, 2)
                .Select(_ =>
                {
                    using var stream = new MemoryStream();
                    ObjectDrawing.Draw(made, "witness", null, false).WritePdf(stream);
                    return stream.ToArray();
                }),
        ];
        Assert.Equal(twice[0], twice[1]);
    }

    /// <summary>All deflated streams of a PDF as text.</summary>
    private static string Content(byte[] pdf)
    {
        var text = new StringBuilder();
        string all = Encoding.Latin1.GetString(pdf);
        foreach (Match m in Stream().Matches(all))
            try
            {
                using var zip = new ZLibStream(
                    new MemoryStream(pdf, m.Index + m.Length, pdf.Length - m.Index - m.Length),
                    CompressionMode.Decompress
                );
                using var reader = new StreamReader(zip, Encoding.Latin1);
                text.Append(reader.ReadToEnd()).Append('\n');
            }
            catch (InvalidDataException)
            {
                // A font or a picture in another coding.
            }
        return text.ToString();
    }

    [GeneratedRegex(@"/MediaBox \[([\d. ]+)\]")]
    private static partial Regex MediaBox();

    [GeneratedRegex(@"FlateDecode[^>]*>>\s*stream\r?\n")]
    private static partial Regex Stream();

    [GeneratedRegex(@"(0?\.\d+) 0 0 0?\.\d+ 0 0 cm")]
    private static partial Regex PageScale();

    [GeneratedRegex(@"(-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) re")]
    private static partial Regex Rectangle();
}
