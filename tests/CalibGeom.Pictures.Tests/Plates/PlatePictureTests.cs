using System.Text;
using CalibGeom.Meshes;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plates;
using CalibGeom.Plates;
using SkiaSharp;

namespace CalibGeom.Pictures.Tests.Plates;

public class PlatePictureTests
{
    [Fact]
    public void ShowsPartsGapAndCouponsWhereTheyAre()
    {
        using var stream = new MemoryStream();
        Drawing drawing = Picture();
        drawing.WritePng(stream);
        using SKBitmap image = SKBitmap.Decode(stream.ToArray());
        SKColor part = At(-20, 10),
            gap = At(-9.2, 10),
            free = At(23, 23),
            coupon = At(2, -18);
        Assert.Equal(new SKColor(0xB4, 0xBA, 0xC0), part);
        Assert.Equal(SKColors.White, free);
        Assert.InRange(gap.Red, part.Red + 10, 250);
        Assert.True(coupon.Blue > coupon.Red + 10, coupon.ToString());

        SKColor At(double x, double y)
        {
            double scale = 780 / 80.0;
            return image.GetPixel((int)(2 * (68 + (x + 40) * scale)), (int)(2 * (40 + (30 - y) * scale)));
        }
    }

    [Fact]
    public void NamesEachCouponAndSaysWhatWasDrawn()
    {
        using var stream = new MemoryStream();
        Picture().WriteSvg(stream);
        string svg = Encoding.UTF8.GetString(stream.ToArray());
        foreach (string word in (string[])["A1", "A2", "parts", "gap 2 mm", "coupons", "margin", "X, mm", "a plate"])
            Assert.Contains($">{word}<", svg, StringComparison.Ordinal);
        Assert.InRange(svg.Length, 4_000, 60_000);
        using var again = new MemoryStream();
        Picture().WriteSvg(again);
        Assert.Equal(stream.ToArray(), again.ToArray());
    }

    [Fact]
    public void ARingIsDrawnWithItsHole()
    {
        var layout = new PlateLayout(
            new Plate(80, 60),
            [
                PlatePart.Of(
                    "frame",
                    TriangleMesh.Join([
                        Box(-30, -20, 30, -15),
                        Box(-30, 15, 30, 20),
                        Box(-30, -15, -25, 15),
                        Box(25, -15, 30, 15),
                    ])
                ),
            ]
        );
        Assert.Equal(2, ShadowOutlines.Trace(layout.ToShadowMap(), 0).Count());
        Assert.Equal(2, ShadowOutlines.Trace(layout.ToShadowMap(), 5).Count());
        Assert.Single(ShadowOutlines.Trace(layout.ToShadowMap(), 16));
    }

    private static Drawing Picture()
    {
        var layout = new PlateLayout(new Plate(80, 60, margin: 1), [PlatePart.Of("part", Box(-35, -5, -10, 25))]);
        var coupon = new Coupon("witness", Box(-7, -5, 7, 5));
        layout.Place(coupon, PlacementWish.Near(2, -18), "A1");
        layout.Place(coupon, PlacementWish.Corner, "A2");
        return PlatePicture.Draw(layout, "a plate");
    }

    private static TriangleMesh Box(double x0, double y0, double x1, double y1) =>
        new(
            [x0, y0, 0, x1, y0, 0, x1, y1, 0, x0, y1, 0, x0, y0, 9, x1, y0, 9, x1, y1, 9, x0, y1, 9],
            [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7]
        );
}
