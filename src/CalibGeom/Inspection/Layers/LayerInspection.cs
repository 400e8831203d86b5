using System.Globalization;
using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Goes through a mesh layer by layer as a printer would: area, islands, overhangs, bridges, trapped resin, thin walls
/// and gaps. A block of layers is in memory at a time, as runs of pixels.
/// </summary>
public static class LayerInspection
{
    /// <summary>The most pixels of one layer that stick out beyond the one below: 250 x 250 mm.</summary>
    internal const int MostHanging = 40_000_000;

    private const int MostLayers = 1_000_000,
        MostPixels = 400_000_000;

    // Layers that are in memory together, as runs of pixels.
    private const int Block = 32;

    /// <summary>Inspects a mesh that stands with its lowest point on the plate and is printed plate-side up.</summary>
    /// <param name="mesh">Any mesh; what is inside out or open is sliced as it is.</param>
    /// <param name="settings">The process and limits; <c>null</c> takes the defaults.</param>
    /// <param name="progress">Told the finished part, 0 to 1, for each layer.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">The mesh is too large for the process: more than 1,000,000 layers,
    /// 400,000,000 pixels a layer, or 40,000,000 that stick out at once.</exception>
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
        RequireSize(mesh.Bounds.Size, settings);
        var slicer = new LayerSlicer(mesh, settings.LayerHeight);
        PixelGrid grid = PixelGrid.Covering(mesh.Bounds, settings.PixelX, settings.PixelY);
        var pass = new LayerPass(mesh, slicer, grid, settings, cancellation);
        foreach (LayerContours[] block in slicer.Slice().Chunk(Block))
        {
            cancellation.ThrowIfCancellationRequested();
            pass.Add(block);
            foreach (LayerContours layer in block)
                progress?.Report((layer.Index + 1.0) / slicer.LayerCount);
        }
        return pass.Finish(mesh.Bounds);
    }

    /// <summary>A mesh in the wrong unit is told before hours and gigabytes are spent on it.</summary>
    private static void RequireSize(Vector3D size, LayerSettings settings)
    {
        double layers = size.Z / settings.LayerHeight,
            pixels = (size.X / settings.PixelX + 2) * (size.Y / settings.PixelY + 2);
        if (layers > MostLayers)
            throw TooLarge(
                size,
                FormattableString.Invariant($"{layers:0} layers of {settings.LayerHeight} mm"),
                MostLayers
            );
        if (pixels > MostPixels)
            throw TooLarge(
                size,
                FormattableString.Invariant($"{pixels:0} pixels of {settings.PixelX} x {settings.PixelY} mm a layer"),
                MostPixels
            );
    }

    private static InputException TooLarge(Vector3D size, string what, int most) =>
        new(
            InputIds.Mesh,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The mesh is {size.X:0.##} x {size.Y:0.##} x {size.Z:0.##} mm, which makes {what}; at most {most} "
                    + $"can be inspected. Is it in millimetres?"
            )
        );
}
