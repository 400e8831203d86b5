using System.Globalization;

namespace CalibGeom.Light;

/// <summary>
/// The light a stack of equal layers receives: each layer is exposed from its film side with irradiance times time,
/// light falls off with depth by Beer and Lambert, and later layers add to earlier ones. Cured and liquid resin absorb
/// alike. Immutable.
/// </summary>
public sealed record LayerLight
{
    /// <summary>The light of a stack of layers.</summary>
    /// <param name="curve">The resin's working curve.</param>
    /// <param name="irradiance">Irradiance at the film in mW/cm2, above 0 and at most 1000.</param>
    /// <param name="time">Exposure time of a normal layer in s, above 0 and at most 1000.</param>
    /// <param name="layer">Layer height in mm, above 0 and at most 1.</param>
    /// <param name="baseLayers">How many layers at the plate are exposed for the base time, 0 to 1000. Default
    /// 0.</param>
    /// <param name="baseTime">Exposure time of a base layer in s, 0 to 1000. Default 0.</param>
    /// <exception cref="ArgumentException">A value is out of its range.</exception>
    public LayerLight(
        WorkingCurve curve,
        double irradiance,
        double time,
        double layer,
        int baseLayers = 0,
        double baseTime = 0
    )
    {
        ArgumentNullException.ThrowIfNull(curve);
        Curve = curve;
        Irradiance = Require.Positive(irradiance, 1000, "irradiance", "mW/cm2", nameof(irradiance));
        Time = Require.Positive(time, 1000, "exposure time", "s", nameof(time));
        Layer = Require.Positive(layer, 1, "layer height", "mm", nameof(layer));
        BaseLayers = baseLayers is >= 0 and <= 1000
            ? baseLayers
            : throw new ArgumentException(
                $"The number of base layers must be 0 to 1000, not {baseLayers}.",
                nameof(baseLayers)
            );
        BaseTime = baseTime == 0 ? 0 : Require.Positive(baseTime, 1000, "base exposure", "s", nameof(baseTime));
    }

    /// <summary>The resin's working curve.</summary>
    public WorkingCurve Curve { get; }

    /// <summary>Irradiance at the film in mW/cm2.</summary>
    public double Irradiance { get; }

    /// <summary>Exposure time of a normal layer in s.</summary>
    public double Time { get; }

    /// <summary>Layer height in mm.</summary>
    public double Layer { get; }

    /// <summary>How many layers at the plate are exposed for the base time.</summary>
    public int BaseLayers { get; }

    /// <summary>Exposure time of a base layer in s.</summary>
    public double BaseTime { get; }

    /// <summary>The dose of one normal layer at the film, mJ/cm2.</summary>
    public double Dose => Irradiance * Time;

    /// <summary>The dose of one layer at the film, mJ/cm2.</summary>
    /// <param name="layer">0 at the plate.</param>
    public double DoseOf(int layer) => Irradiance * (layer < BaseLayers ? BaseTime : Time);

    /// <summary>What a layer lets through to the one before it: exp(-h / Dp).</summary>
    public double Transmission => Math.Exp(-Layer / Curve.PenetrationDepth);

    /// <summary>
    /// How many times its own dose the film side of a layer gets in the end: (1 - q^n) / (1 - q) with transmission q
    /// and n lit layers, its own included.
    /// </summary>
    /// <param name="layers">The number of lit layers, its own included, at least 1; <see cref="int.MaxValue"/> stands
    /// for a tall part.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public double Accumulation(int layers = int.MaxValue)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(layers, 1);
        return (1 - Math.Pow(Transmission, layers)) / (1 - Transmission);
    }

    /// <summary>
    /// The dose over the critical dose on the most exposed level of an upright wall, deep inside the lit area: what a
    /// caliper, touching the widest level, measures the growth of.
    /// </summary>
    /// <param name="layers">The number of layers from there on, at least 1.</param>
    public double WallRatio(int layers = int.MaxValue) => Dose * Accumulation(layers) / Curve.CriticalDose;

    /// <summary>
    /// How deep one exposure of a normal layer cures, in mm. Below a layer height, a last layer or one over a gap does
    /// not reach the layer below it; negative when one exposure cures nothing.
    /// </summary>
    public double CureDepth => Curve.Depth(Dose);

    /// <summary>
    /// How far light passing through a ceiling cures the resin below it, in mm: Dp ln(E q (1 - q^n) / ((1 - q) Ec)).
    /// Negative when not even the ceiling's underside becomes solid.
    /// </summary>
    /// <param name="layers">The number of layers the ceiling has, at least 1.</param>
    public double PrintThrough(int layers = int.MaxValue) => Curve.Depth(Dose * Transmission * Accumulation(layers));

    /// <summary>
    /// Whether a print holds together: a warning <c>cure-depth</c> where one exposure cures less than a layer, of which
    /// nothing that is computed here will come true.
    /// </summary>
    public IEnumerable<Finding> Check()
    {
        if (CureDepth >= Layer)
            yield break;
        yield return new Finding(
            "cure-depth",
            Severity.Warning,
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"THIS PRINT WOULD NOT HOLD TOGETHER: one exposure cures {Math.Max(0, CureDepth):0.000} mm, less than "
                    + $"a layer of {Layer} mm. Its sizes are arithmetic, not a print."
            ),
            string.Create(
                CultureInfo.InvariantCulture,
                $"Expose {Curve.DoseFor(Layer) / Irradiance:0.00} s or longer, or print thinner layers."
            )
        )
        {
            Value = CureDepth,
            Limit = Layer,
            Unit = "mm",
        };
    }
}
