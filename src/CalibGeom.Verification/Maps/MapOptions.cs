using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Maps;

/// <summary>The plate and what counts as even. Immutable; an object that exists is valid.</summary>
public sealed record MapOptions
{
    private readonly double width = 150,
        depth = 90,
        tolerance = 0.012,
        lightTolerance = 0.10,
        columnExponent = 0.35;

    /// <summary>Width of the plate along X, mm, above 0 and at most 2000. Default 150.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double Width
    {
        get => width;
        init => width = Require.Positive(value, 2000, "width of the plate", "mm", nameof(Width));
    }

    /// <summary>Depth of the plate along Y, mm, above 0 and at most 2000. Default 90.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double Depth
    {
        get => depth;
        init => depth = Require.Positive(value, 2000, "depth of the plate", "mm", nameof(Depth));
    }

    /// <summary>By how much a clearance may differ from the middle of the plate, mm per side. Default 0.012.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double Tolerance
    {
        get => tolerance;
        init => tolerance = Require.Positive(value, 1, "tolerance", "mm", nameof(Tolerance));
    }

    /// <summary>By what share the light may differ from what was calibrated, 0.01 to 0.9. Default 0.10.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double LightTolerance
    {
        get => lightTolerance;
        init => lightTolerance = Require.Within(value, 0.01, 0.9, "light tolerance", "", nameof(LightTolerance));
    }

    /// <summary>How growth answers to ln(light), mm. Default median 0.035, 95 % 0.008 to 0.15.</summary>
    public LogNormalPrior LightEffect { get; init; } = LogNormalPrior.Of95(0.035, 0.008, 0.15);

    /// <summary>How print-through answers to ln(light), mm. Default median 0.12, 95 % 0.05 to 0.30.</summary>
    public LogNormalPrior PenetrationDepth { get; init; } = LogNormalPrior.Of95(0.12, 0.05, 0.30);

    /// <summary>ln of the thinnest column goes with ln(light) times minus this, 0 to 5. Default 0.35.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double ColumnExponent
    {
        get => columnExponent;
        init => columnExponent = Require.Within(value, 0, 5, "column exponent", "", nameof(ColumnExponent));
    }

    /// <summary>The defaults: a plate of 150 x 90 mm.</summary>
    public static MapOptions Default { get; } = new();
}
