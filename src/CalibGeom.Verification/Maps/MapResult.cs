using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Maps;

/// <summary>What the coupons of one print say of the plate. Immutable.</summary>
public sealed class MapResult
{
    private readonly FittedLight light;

    internal MapResult(FittedLight light) => this.light = light;

    /// <summary>The light at each coupon.</summary>
    public required IReadOnlyList<PlacedLight> Places { get; init; }

    /// <summary>
    /// The probability of coupons that differ so much when the light is the same everywhere, from three tests (any
    /// difference, plane, bowl) taken together by the mean of their Cauchy scores (Liu and Xie, Journal of the American
    /// Statistical Association 115 (2020) 393).
    /// </summary>
    public required double Probability { get; init; }

    /// <summary>Whether a difference is claimed: <see cref="Probability"/> below 0.05.</summary>
    public bool Differs => Probability < 0.05;

    /// <summary>The test of any difference between coupons; null when there is nothing to compare.</summary>
    public NestedTest? AnyDifference { get; init; }

    /// <summary>The test of a plane against even light; null when the places cannot tell.</summary>
    public NestedTest? Plane { get; init; }

    /// <summary>
    /// The test of a bowl against a plane; null when the places cannot tell: fewer than five, or on a circle.
    /// </summary>
    public NestedTest? Bowl { get; init; }

    /// <summary>The shape that is supported.</summary>
    public SurfaceShape Shape => light.Shape.Shape;

    /// <summary>
    /// Where the light is weakest: the fewest places, of the four corners of the plate and its middle, that hold the
    /// weakest with a probability of at least 0.90 together, the most probable first. One place: it is known. All
    /// five: it cannot be told. Empty when no difference is claimed.
    /// </summary>
    public IReadOnlyList<WeakPlace> WeakestPlaces { get; init; } = [];

    /// <summary>ln of the exposure for the whole plate over the present one.</summary>
    public required double ExposureChange { get; init; }

    /// <summary>The share of the plate that this exposure keeps within the limits, 0 to 1.</summary>
    public required double WithinShare { get; init; }

    /// <summary>The largest rectangle of the plate within the limits; null when there is none, or when no
    /// difference is claimed: then it is the whole plate.</summary>
    public PlatePart? Within { get; init; }

    /// <summary>The tilt of the plate from thicknesses; null when fewer than four coupons have one.</summary>
    public PlateLevel? Level { get; init; }

    /// <summary>What was asked for.</summary>
    public required MapOptions Options { get; init; }

    /// <summary>
    /// ln(light) at a place less the mean of the coupons, with its 95 % interval. Where no difference is claimed the
    /// value is 0, and the interval that of a plane: what could hide.
    /// </summary>
    /// <param name="x">X in plate coordinates, mm.</param>
    /// <param name="y">Y in plate coordinates, mm.</param>
    public Amount LightAt(double x, double y) => light.At(x, y);

    /// <summary>
    /// By how much the clearance at a place differs from the mean of the coupons, mm per side, with its 95 % interval:
    /// it falls by twice the growth, and growth answers to light by <see cref="MapOptions.LightEffect"/>.
    /// </summary>
    /// <param name="x">X in plate coordinates, mm.</param>
    /// <param name="y">Y in plate coordinates, mm.</param>
    public Amount ClearanceChangeAt(double x, double y)
    {
        Amount at = LightAt(x, y);
        double factor = -2 * Options.LightEffect.Median;
        return new Amount(factor * at.Value, factor * at.High, factor * at.Low);
    }
}
