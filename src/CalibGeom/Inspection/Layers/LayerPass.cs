using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>All checks, fed layer by layer from the plate upward.</summary>
internal sealed class LayerPass(PixelGrid grid, LayerSettings settings)
{
    private readonly CoverageRasterizer rasterizer = new(grid);
    private readonly IslandCheck islands = new();
    private readonly OverhangCheck overhangs = new(grid, settings.CarriedOverhang);
    private readonly ResinCheck resin = new(grid, settings.LayerHeight);
    private readonly WidthCheck widths = new(grid, settings.MinimumPixels, settings.LayerHeight);
    private readonly List<LayerSummary> layers = [];
    private LayerMask? below;

    internal void Add(LayerContours contours)
    {
        CoverageRaster raster = rasterizer.Draw(contours);
        LayerMask mask = raster.ToMask();
        layers.Add(Summarize(contours, raster));
        if (below is not null)
        {
            islands.Check(contours.Index, contours.Z, mask, below);
            overhangs.Check(contours.Index, contours.Z, mask, below);
        }
        resin.Check(contours.Index, contours.Z, mask);
        widths.Check(contours.Index, contours);
        below = mask;
    }

    internal LayerReport Finish(Box3D bounds)
    {
        resin.Finish(layers.Count - 1);
        return new LayerReport(
            settings,
            bounds,
            layers,
            [.. islands.Defects, .. overhangs.Defects, .. resin.Defects, .. widths.Defects]
        );
    }

    private static LayerSummary Summarize(LayerContours contours, CoverageRaster raster)
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
        return new LayerSummary(contours.Index, contours.Z, raster.Overlaps ? raster.Area : contours.Area, min, max);
    }
}
