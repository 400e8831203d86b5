using SkiaSharp;

namespace CalibGeom.Pictures.Drawings;

/// <summary>Draws shapes on a canvas of the graphics library, with the font that travels in this assembly.</summary>
internal static class SkiaPainter
{
    internal static void Draw(SKCanvas canvas, Drawing drawing)
    {
        if (drawing.Ground is { } ground)
            canvas.Clear(Colour(ground));
        foreach (Shape shape in drawing.Shapes)
            Draw(canvas, shape);
    }

    private static void Draw(SKCanvas canvas, Shape shape)
    {
        switch (shape)
        {
            case PathShape path:
                using (SKPath outline = Outline(path))
                    Paint(path.Fill, path.Pen, paint => canvas.DrawPath(outline, paint));
                break;
            case DiscShape disc:
                Paint(
                    disc.Fill,
                    disc.Pen,
                    paint => canvas.DrawCircle((float)disc.X, (float)disc.Y, (float)disc.Radius, paint)
                );
                break;
            case TextShape text:
                Draw(canvas, text);
                break;
            case ImageShape image:
                Draw(canvas, image);
                break;
            case ClipShape clip:
                canvas.Save();
                canvas.ClipRect(Rectangle(clip.X, clip.Y, clip.Width, clip.Height), SKClipOperation.Intersect, true);
                foreach (Shape inner in clip.Shapes)
                    Draw(canvas, inner);
                canvas.Restore();
                break;
        }
    }

    private static void Draw(SKCanvas canvas, ImageShape shape)
    {
        using SKImage image = SKImage.FromEncodedData(shape.Png);
        using var paint = new SKPaint { IsAntialias = true };
        canvas.DrawImage(
            image,
            Rectangle(shape.X, shape.Y, shape.Width, shape.Height),
            new SKSamplingOptions(SKCubicResampler.Mitchell),
            paint
        );
    }

    private static SKRect Rectangle(double x, double y, double width, double height) =>
        SKRect.Create((float)x, (float)y, (float)width, (float)height);

    private static SKPath Outline(PathShape path)
    {
        using var builder = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var line in path.Lines)
        {
            builder.MoveTo((float)line[0].X, (float)line[0].Y);
            for (int i = 1; i < line.Length; i++)
                builder.LineTo((float)line[i].X, (float)line[i].Y);
            if (path.Closed)
                builder.Close();
        }
        return builder.Detach();
    }

    private static void Paint(Ink? fill, Pen? pen, Action<SKPaint> draw)
    {
        using var paint = new SKPaint { IsAntialias = true };
        if (fill is { } ink)
        {
            paint.Color = Colour(ink);
            draw(paint);
        }
        if (pen is null)
            return;
        paint.Style = SKPaintStyle.Stroke;
        paint.StrokeJoin = SKStrokeJoin.Round;
        paint.StrokeWidth = (float)pen.Width;
        paint.Color = Colour(pen.Ink);
        using SKPathEffect? dashes =
            pen.Dash > 0 ? SKPathEffect.CreateDash([(float)pen.Dash, (float)pen.Dash], 0) : null;
        paint.PathEffect = dashes;
        draw(paint);
    }

    private static void Draw(SKCanvas canvas, TextShape text)
    {
        using SKFont font = TextFont.Create(text.Style.Size, text.Style.Bold);
        using var paint = new SKPaint { IsAntialias = true, Color = Colour(text.Style.Ink) };
        SKTextAlign align = text.Style.Anchor switch
        {
            TextAnchor.Start => SKTextAlign.Left,
            TextAnchor.Middle => SKTextAlign.Center,
            _ => SKTextAlign.Right,
        };
        canvas.Save();
        canvas.RotateDegrees((float)-text.Style.Turn, (float)text.X, (float)text.Y);
        canvas.DrawText(text.Text, (float)text.X, (float)text.Y, align, font, paint);
        canvas.Restore();
    }

    private static SKColor Colour(Ink ink) => new(ink.R, ink.G, ink.B, (byte)Math.Round(ink.Opacity * 255));
}
