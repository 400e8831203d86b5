using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Goes through a mesh layer by layer as a printer would: area, islands, overhangs, bridges, trapped resin, thin walls
/// and gaps. One layer
/// and the one below it are in memory at a time, as runs of pixels.
/// </summary>
public static class LayerInspection
{
    /// <summary>Inspects a mesh that stands with its lowest point on the plate and is printed plate-side up.</summary>
    /// <param name="mesh">Any mesh; what is inside out or open is sliced as it is.</param>
    /// <param name="settings">The process and limits; <c>null</c> takes the defaults.</param>
    /// <param name="progress">Told the finished part, 0 to 1, after each layer.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mesh is too large for the process: more than 1,000,000 layers
    /// or 1,000,000,000 pixels a layer.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static LayerReport Run(
        TriangleMesh mesh,
        LayerSettings? settings = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(mesh);
        settings ??= new LayerSettings();
        if (mesh.TriangleCount == 0)
            return new LayerReport(settings, default, [], []);
        var slicer = new LayerSlicer(mesh, settings.LayerHeight);
        PixelGrid grid = PixelGrid.Covering(mesh.Bounds, settings.PixelX, settings.PixelY);
        var pass = new LayerPass(grid, settings);
        foreach (LayerContours contours in slicer.Slice())
        {
            cancellation.ThrowIfCancellationRequested();
            pass.Add(contours);
            progress?.Report((contours.Index + 1.0) / slicer.LayerCount);
        }
        return pass.Finish(mesh.Bounds);
    }
}
