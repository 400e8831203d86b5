using CalibGeom.Planar;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Draws layers and measures their walls, each layer for itself. Reusable; not safe to share between threads.
/// </summary>
internal sealed class LayerDrawing(PixelGrid grid, double limit)
{
    private readonly CoverageRasterizer rasterizer = new(grid);
    private readonly LineSpans rows = new(grid, false, limit);
    private readonly LineSpans columns = new(grid, true, limit);

    internal DrawnLayer Draw(LayerContours contours)
    {
        LayerMask mask = rasterizer.Mask(contours, out double? area);
        var thin = new List<ThinSample>();
        rows.Measure(contours, thin.Add);
        columns.Measure(contours, thin.Add);
        SmallContours.Measure(contours, limit, thin.Add);
        return new DrawnLayer(Summarize(contours, area ?? contours.Area), mask, thin);
    }

    private static LayerSummary Summarize(LayerContours contours, double area)
    {
        if (contours.Points.Length == 0)
            return new LayerSummary(contours.Index, contours.Z, 0, default, default);
        Vector2D min = contours.Points[0],
            max = min;
        foreach (Vector2D p in contours.Points)
            (min, max) = (
                new(Math.Min(min.X, p.X), Math.Min(min.Y, p.Y)),
                new(Math.Max(max.X, p.X), Math.Max(max.Y, p.Y))
            );
        return new LayerSummary(contours.Index, contours.Z, area, min, max);
    }
}
