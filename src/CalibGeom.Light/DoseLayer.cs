using CalibGeom.Slicing;

namespace CalibGeom.Light;

/// <summary>
/// The dose on the film side of one layer. Its memory is used again when the next layer is asked for; from then on the
/// layer refuses to be read. Not safe to share between threads.
/// </summary>
public sealed class DoseLayer
{
    private readonly DoseSweep sweep;
    private readonly int exposure;

    internal DoseLayer(int index, double z, PixelGrid grid, DoseSweep sweep) =>
        (Index, Z, Grid, this.sweep, exposure) = (index, z, grid, sweep, sweep.Exposures);

    /// <summary>The layer's number, from 0 at the plate.</summary>
    public int Index { get; }

    /// <summary>The height of the film side in the coordinates of the mesh, mm.</summary>
    public double Z { get; }

    /// <summary>The field of pixels.</summary>
    public PixelGrid Grid { get; }

    /// <summary>The dose in the middle of every pixel, mJ/cm2, row by row from the front.</summary>
    /// <exception cref="InvalidOperationException">The next layer has been asked for.</exception>
    public ReadOnlySpan<float> Values =>
        exposure == sweep.Exposures
            ? sweep.Dose
            : throw new InvalidOperationException(
                $"Layer {Index} has made room for the next one. Use its values before you ask for another layer, or "
                    + "copy them."
            );

    /// <summary>The pixels whose middle reaches a dose.</summary>
    /// <param name="critical">The critical dose, mJ/cm2.</param>
    public LayerMask Solid(double critical)
    {
        var builder = new LayerMaskBuilder(Grid);
        for (int y = 0; y < Grid.Height; y++)
        {
            ReadOnlySpan<float> row = Values.Slice(y * Grid.Width, Grid.Width);
            for (int start = 0, end; start < row.Length; start = end + 1)
            {
                while (start < row.Length && row[start] < critical)
                    start++;
                for (end = start; end < row.Length && row[end] >= critical; )
                    end++;
                builder.Add(start, end);
            }
            builder.EndRow();
        }
        return builder.ToMask();
    }
}
