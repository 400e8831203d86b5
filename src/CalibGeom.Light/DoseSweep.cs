using CalibGeom.Slicing;

namespace CalibGeom.Light;

/// <summary>Adds exposure upon exposure to a raster of doses, from the last layer to the plate.</summary>
internal sealed class DoseSweep(PixelGrid grid, EdgeBlur blur)
{
    private readonly (float Weight, RasterBlur Blur)[] parts =
    [
        .. blur.Components.Select(c => ((float)c.Weight, new RasterBlur(grid, c.Sigma))),
    ];
    private readonly ulong[] lit = new ulong[grid.Height];

    /// <summary>The dose in the middle of every pixel, row by row.</summary>
    internal float[] Dose { get; } = new float[grid.Width * grid.Height];

    /// <summary>How many exposures have been added.</summary>
    internal int Exposures { get; private set; }

    /// <summary>
    /// Moves down by a layer that lets a share of the light through, and adds the layer's own exposure.
    /// </summary>
    internal void Expose(CoverageRaster mask, float dose, float transmission)
    {
        Exposures++;
        for (int i = 0; i < parts.Length; i++)
            parts[i].Blur.AddTo(Dose, lit, mask, dose * parts[i].Weight, i == 0 ? transmission : 1);
    }
}
