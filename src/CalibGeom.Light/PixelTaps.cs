namespace CalibGeom.Light;

/// <summary>
/// How much of a Gaussian's weight falls on each pixel along one axis. What lies beyond 4.5 standard deviations is left
/// out.
/// </summary>
internal readonly struct PixelTaps
{
    private const double Reach = 4.5;
    private readonly double[] sums;

    /// <summary>The weights around a place.</summary>
    /// <param name="place">mm from the border of pixel 0.</param>
    /// <param name="pitch">mm.</param>
    /// <param name="sigma">mm.</param>
    internal PixelTaps(double place, double pitch, double sigma)
    {
        First = (int)Math.Floor((place - Reach * sigma) / pitch);
        sums = new double[(int)Math.Floor((place + Reach * sigma) / pitch) - First + 2];
        for (int i = 1; i < sums.Length - 1; i++)
            sums[i] = NormalLaw.Cumulative(((First + i) * pitch - place) / sigma);
        sums[^1] = 1;
    }

    /// <summary>The first pixel with a weight.</summary>
    internal int First { get; }

    /// <summary>The pixel after the last.</summary>
    internal int End => First + sums.Length - 1;

    /// <summary>The weight of the pixels from start to before end.</summary>
    internal double Between(int start, int end) =>
        sums[Math.Clamp(end - First, 0, sums.Length - 1)] - sums[Math.Clamp(start - First, 0, sums.Length - 1)];
}
