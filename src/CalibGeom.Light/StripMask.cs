namespace CalibGeom.Light;

/// <summary>
/// Parallel lit strips, long compared with the blur: a cross-section through bars, slots or the two walls of a box,
/// with its blurred dose in closed form. Immutable and safe to share between threads.
/// </summary>
public sealed class StripMask
{
    private readonly double[] edges;
    private readonly EdgeBlur blur;

    /// <summary>Lit strips.</summary>
    /// <param name="blur">The blur.</param>
    /// <param name="edges">Positions in mm, rising: begin and end of the first strip, of the second, and so on.</param>
    /// <exception cref="ArgumentException">The number of edges is odd or zero, or they do not rise.</exception>
    public StripMask(EdgeBlur blur, params double[] edges)
    {
        ArgumentNullException.ThrowIfNull(blur);
        ArgumentNullException.ThrowIfNull(edges);
        if (edges.Length == 0 || edges.Length % 2 != 0)
            throw new ArgumentException($"Strips need an even number of edges, not {edges.Length}.", nameof(edges));
        for (int i = 0; i < edges.Length; i++)
            if (!double.IsFinite(edges[i]) || (i > 0 && edges[i] <= edges[i - 1]))
                throw new ArgumentException(
                    FormattableString.Invariant($"Edges must rise; edge {i + 1} is {edges[i]} mm."),
                    nameof(edges)
                );
        this.blur = blur;
        this.edges = (double[])edges.Clone();
    }

    /// <summary>One bar around x = 0.</summary>
    /// <param name="blur">The blur.</param>
    /// <param name="width">Its width in mm, above 0.</param>
    public static StripMask Bar(EdgeBlur blur, double width) => new(blur, -width / 2, width / 2);

    /// <summary>The dose at a position, as a share of the dose in a wide lit area.</summary>
    /// <param name="x">The position in mm.</param>
    public double Share(double x)
    {
        double share = 0;
        for (int i = 0; i < edges.Length; i += 2)
            share += blur.EdgeShare(x - edges[i + 1]) - blur.EdgeShare(x - edges[i]);
        return share;
    }

    /// <summary>
    /// Where the boundary between solid and liquid lies that belongs to an edge, in mm; null when the strip or the gap
    /// beside it vanishes.
    /// </summary>
    /// <param name="edge">The edge, counted from 0.</param>
    /// <param name="ratio">The dose in a wide lit area over the critical dose, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such edge.</exception>
    public double? Boundary(int edge, double ratio)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(edge);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(edge, edges.Length);
        double threshold = 1 / ratio;
        int mate = edge % 2 == 0 ? edge + 1 : edge - 1,
            across = edge % 2 == 0 ? edge - 1 : edge + 1;
        double lit = (edges[edge] + edges[mate]) / 2;
        double dark =
            across >= 0 && across < edges.Length
                ? (edges[edge] + edges[across]) / 2
                : edges[edge] + Math.CopySign(Reach(threshold), edges[edge] - edges[mate]);
        if (Share(lit) <= threshold || Share(dark) >= threshold)
            return null;
        return Root.Between(x => Share(x) - threshold, lit, dark);
    }

    /// <summary>The width in mm to which a bar prints; null when it does not print at all.</summary>
    /// <param name="blur">The blur.</param>
    /// <param name="width">The bar's width in mm, above 0.</param>
    /// <param name="ratio">The dose in a wide lit area over the critical dose, above 0.</param>
    public static double? BarWidth(EdgeBlur blur, double width, double ratio) =>
        2 * Bar(blur, width).Boundary(1, ratio);

    // Beyond the last edge the dose of all strips together is below that of a half-plane ending there.
    private double Reach(double threshold) =>
        Math.Max(0, threshold < 1 ? blur.EdgeDistance(threshold) : 0) + blur.Width;
}
