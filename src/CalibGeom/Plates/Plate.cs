namespace CalibGeom.Plates;

/// <summary>
/// The build plate, in the coordinates that parts and coupons share: a rectangle with a margin along its edges that
/// stays empty. Immutable and safe to share between threads.
/// </summary>
public sealed record Plate
{
    // mm; a kilometre, at which the grid is still far finer than any printer.
    private const double Furthest = 1_000_000;

    /// <summary>A plate whose centre is X = Y = 0.</summary>
    /// <param name="width">Along X, mm; 1 to 1000.</param>
    /// <param name="depth">Along Y, mm; 1 to 1000.</param>
    /// <param name="height">How high a print may be, mm, above 0; null (default) when that does not matter.</param>
    /// <param name="margin">Width of the strip along each edge that stays empty, mm; 0 (default) or more, less than
    /// half of either side.</param>
    /// <exception cref="ArgumentException">A size is out of range.</exception>
    public Plate(double width, double depth, double? height = null, double margin = 0)
    {
        Width = Require.Within(width, 1, 1000, "width of the plate", "mm", nameof(width));
        Depth = Require.Within(depth, 1, 1000, "depth of the plate", "mm", nameof(depth));
        Height = height is { } h ? Require.Positive(h, 1000, "height of the plate", "mm", nameof(height)) : null;
        Margin =
            margin < Math.Min(width, depth) / 2
                ? Require.Within(margin, 0, 500, "margin of the plate", "mm", nameof(margin))
                : throw new ArgumentException(
                    "The margin of the plate must be less than half of its shorter side.",
                    nameof(margin)
                );
    }

    /// <summary>Along X, mm.</summary>
    public double Width { get; }

    /// <summary>Along Y, mm.</summary>
    public double Depth { get; }

    /// <summary>How high a print may be, mm, or null.</summary>
    public double? Height { get; }

    /// <summary>Width of the strip along each edge that stays empty, mm.</summary>
    public double Margin { get; }

    /// <summary>X of the plate's centre, mm; -1,000,000 to 1,000,000, 0 by default.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double CentreX
    {
        get;
        init => field = Require.Within(value, -Furthest, Furthest, "centre of the plate in X", "mm", nameof(CentreX));
    }

    /// <summary>Y of the plate's centre, mm; -1,000,000 to 1,000,000, 0 by default.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double CentreY
    {
        get;
        init => field = Require.Within(value, -Furthest, Furthest, "centre of the plate in Y", "mm", nameof(CentreY));
    }

    /// <summary>X of the left edge, mm.</summary>
    public double MinX => CentreX - Width / 2;

    /// <summary>X of the right edge, mm.</summary>
    public double MaxX => CentreX + Width / 2;

    /// <summary>Y of the front edge, mm.</summary>
    public double MinY => CentreY - Depth / 2;

    /// <summary>Y of the back edge, mm.</summary>
    public double MaxY => CentreY + Depth / 2;

    /// <summary>The same plate with its front left corner at X = Y = 0.</summary>
    public Plate WithCornerOrigin() => this with { CentreX = Width / 2, CentreY = Depth / 2 };
}
