using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Light;

/// <summary>
/// The masks of every layer of a mesh, as runs of pixels lit alike. Immutable and safe to share between threads.
/// </summary>
public sealed class MaskStack
{
    private readonly CoverageRaster[] layers;

    private MaskStack(PixelGrid grid, LayerSlicer slicer, CoverageRaster[] layers)
    {
        Grid = grid;
        LayerHeight = slicer.LayerHeight;
        BaseZ = slicer.BaseZ;
        this.layers = layers;
    }

    /// <summary>The field of pixels.</summary>
    public PixelGrid Grid { get; }

    /// <summary>mm.</summary>
    public double LayerHeight { get; }

    /// <summary>The height of the plate in the coordinates of the mesh, mm.</summary>
    public double BaseZ { get; }

    /// <summary>The number of layers.</summary>
    public int Count => layers.Length;

    /// <summary>The mask of a layer: coverage is the light of a pixel, 0 to 1.</summary>
    /// <param name="layer">0 at the plate to <see cref="Count"/> - 1.</param>
    /// <exception cref="IndexOutOfRangeException">No such layer.</exception>
    public CoverageRaster this[int layer] => layers[layer];

    /// <summary>Cuts a mesh in the middle of each layer and lights its pixels.</summary>
    /// <param name="mesh">The mesh, standing on the plate with its lowest point.</param>
    /// <param name="grid">The pixels; what lies outside stays dark.</param>
    /// <param name="layerHeight">mm, 0.001 to 10.</param>
    /// <param name="grey">Whether a pixel is lit in proportion to its coverage; otherwise fully from half coverage on,
    /// and not below. Default false.</param>
    /// <param name="edgeOffset">How far outlines move outward before pixels are lit, mm. Default 0.</param>
    /// <param name="progress">Told the finished part, 0 to 1, for each layer.</param>
    /// <param name="cancellation">Stops the work between layers.</param>
    /// <exception cref="ArgumentOutOfRangeException">The layer height is out of range, or there would be more than
    /// 1,000,000 layers.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static MaskStack Of(
        TriangleMesh mesh,
        PixelGrid grid,
        double layerHeight,
        bool grey = false,
        double edgeOffset = 0,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(grid);
        var slicer = new LayerSlicer(mesh, layerHeight);
        var rasterizer = new CoverageRasterizer(grid);
        var layers = new CoverageRaster[slicer.LayerCount];
        foreach (LayerContours contours in slicer.Slice())
        {
            cancellation.ThrowIfCancellationRequested();
            CoverageRaster raster = rasterizer.Draw(edgeOffset == 0 ? contours : contours.Moved(edgeOffset));
            layers[contours.Index] = grey ? raster : raster.Threshold();
            progress?.Report((contours.Index + 1.0) / layers.Length);
        }
        return new MaskStack(grid, slicer, layers);
    }

    /// <summary>
    /// The height of a layer's film side, which is its upper one as the part stands on the plate, mm.
    /// </summary>
    /// <param name="layer">0 at the plate.</param>
    public double FilmZ(int layer) => BaseZ + (layer + 1) * LayerHeight;
}
