using SkiaSharp;

namespace CalibGeom.Pictures.Drawings;

/// <summary>
/// PDF with one page a drawing, lines kept as lines, true to scale: a pixel is 1/96 inch, a point 1/72.
/// </summary>
internal static class PdfWriter
{
    private const float PointsPerPixel = 0.75f;

    internal static void Write(IReadOnlyList<Drawing> pages, Stream stream)
    {
        // Skia wants to seek nowhere, but closes what it is given; a copy keeps the caller's stream open.
        using var memory = new MemoryStream();
        using (var wrapped = new SKManagedWStream(memory))
        using (SKDocument document = SKDocument.CreatePdf(wrapped, new SKDocumentPdfMetadata { Creator = "calibgeom" }))
        {
            foreach (Drawing page in pages)
            {
                using SKCanvas canvas = document.BeginPage(
                    (float)page.Width * PointsPerPixel,
                    (float)page.Height * PointsPerPixel
                );
                canvas.Scale(PointsPerPixel);
                SkiaPainter.Draw(canvas, page);
                document.EndPage();
            }
            document.Close();
        }
        stream.Write(memory.GetBuffer(), 0, (int)memory.Length);
    }
}
