using SkiaSharp;

namespace CalibGeom.Pictures.Drawings;

/// <summary>PNG through the graphics library's own raster.</summary>
internal static class PngWriter
{
    internal static void Write(Drawing drawing, Stream stream, double scale)
    {
        if (!(scale is > 0 and <= 8))
            throw new ArgumentOutOfRangeException(
                nameof(scale),
                scale,
                "A scale is more than 0 and at most 8 dots a pixel."
            );
        var info = new SKImageInfo(
            (int)Math.Ceiling(drawing.Width * scale),
            (int)Math.Ceiling(drawing.Height * scale),
            SKColorType.Rgba8888,
            SKAlphaType.Premul
        );
        using SKSurface surface = SKSurface.Create(info);
        surface.Canvas.Clear();
        surface.Canvas.Scale((float)scale);
        SkiaPainter.Draw(surface.Canvas, drawing);
        using SKImage image = surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
        PngMark.Write(data.AsSpan(), stream);
    }
}
