using System.Runtime.InteropServices;
using SkiaSharp;

namespace CalibGeom.Pictures.Views;

/// <summary>A shaded view as dots, several for each pixel to come, and where it lies in the picture's plane.</summary>
internal sealed class ShadedImage
{
    private readonly int width;
    private readonly int height;
    private readonly int over;
    private readonly byte[] dots;

    internal ShadedImage(Box2D frame, int width, int height, int over, byte[] dots)
    {
        Frame = frame;
        this.width = width;
        this.height = height;
        this.over = over;
        this.dots = dots;
    }

    /// <summary>What it covers, mm.</summary>
    internal Box2D Frame { get; }

    /// <summary>The picture at its own size.</summary>
    internal byte[] ToPng() => ToPng((width + over - 1) / over, (height + over - 1) / over);

    /// <summary>The picture in the middle of another size.</summary>
    internal byte[] ToPng(int wide, int high)
    {
        var info = new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul);
        var pin = GCHandle.Alloc(dots, GCHandleType.Pinned);
        try
        {
            using SKImage fine = SKImage.FromPixelCopy(info, pin.AddrOfPinnedObject());
            using SKSurface surface = SKSurface.Create(
                new SKImageInfo(wide, high, SKColorType.Rgba8888, SKAlphaType.Premul)
            );
            surface.Canvas.Clear();
            float w = (float)width / over,
                h = (float)height / over;
            surface.Canvas.DrawImage(
                fine,
                SKRect.Create((wide - w) / 2, (high - h) / 2, w, h),
                new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear)
            );
            using SKImage image = surface.Snapshot();
            using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
            return data.ToArray();
        }
        finally
        {
            pin.Free();
        }
    }
}
