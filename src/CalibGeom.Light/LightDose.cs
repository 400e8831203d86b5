using CalibGeom.Meshes;

namespace CalibGeom.Light;

/// <summary>
/// The light that reaches every place of a print: each layer's mask, blurred, times irradiance and time at the film;
/// weaker by Beer and Lambert toward the plate; summed over all layers exposed from there on. Cured and liquid resin
/// absorb alike, and fresh resin flowing in between two exposures is left out. Immutable and safe to share between
/// threads.
/// </summary>
public sealed class LightDose
{
    private const double Faint = 1e-9;

    /// <summary>The light of a print.</summary>
    /// <param name="masks">The masks of all layers.</param>
    /// <param name="blur">How light spreads sideways.</param>
    /// <param name="light">The light of all layers; its layer height must be that of the masks.</param>
    /// <exception cref="ArgumentException">The layer heights differ.</exception>
    public LightDose(MaskStack masks, EdgeBlur blur, LayerLight light)
    {
        ArgumentNullException.ThrowIfNull(masks);
        ArgumentNullException.ThrowIfNull(blur);
        ArgumentNullException.ThrowIfNull(light);
        if (Math.Abs(light.Layer - masks.LayerHeight) > 1e-9)
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The light is for layers of {light.Layer} mm, the masks for layers of {masks.LayerHeight} mm."
                ),
                nameof(light)
            );
        (Masks, Blur, Light) = (masks, blur, light);
    }

    /// <summary>The masks of all layers.</summary>
    public MaskStack Masks { get; }

    /// <summary>How light spreads sideways.</summary>
    public EdgeBlur Blur { get; }

    /// <summary>The light of all layers.</summary>
    public LayerLight Light { get; }

    /// <summary>
    /// The dose at a place, mJ/cm2, with the light of every pixel spread evenly over its square before it is blurred.
    /// On a film side the layer under it counts. Resin is solid where the dose reaches the critical one.
    /// </summary>
    /// <param name="place">mm, in the coordinates of the mesh.</param>
    public double At(Vector3D place)
    {
        int first = Math.Max(0, (int)Math.Ceiling((place.Z - Masks.BaseZ) / Light.Layer - 1 - 1e-6));
        double fade =
            first < Masks.Count
                ? Math.Exp(-Math.Max(0, Masks.FilmZ(first) - place.Z) / Light.Curve.PenetrationDepth)
                : 0;
        var point = new BlurredPoint(Masks.Grid, Blur, place.X, place.Y);
        double dose = 0;
        for (int layer = first; layer < Masks.Count && fade > Faint; layer++, fade *= Light.Transmission)
            dose += fade * Light.DoseOf(layer) * point.Share(Masks[layer]);
        return dose;
    }

    /// <summary>
    /// Where solid ends: the distance from a face at which the dose crosses the critical one; positive when the solid
    /// grew. Null when there is no such place: nothing is solid behind the face, or what lies ahead has closed.
    /// </summary>
    /// <param name="face">A place on the face as designed, mm.</param>
    /// <param name="outward">A direction of length 1 out of the material.</param>
    /// <param name="behind">How far to look back into the material, mm, above 0.</param>
    /// <param name="ahead">How far to look out of it, mm, above 0.</param>
    public double? Edge(Vector3D face, Vector3D outward, double behind, double ahead)
    {
        double critical = Light.Curve.CriticalDose,
            step = Math.Min(Blur.Width, Light.Curve.PenetrationDepth) / 2;
        double Excess(double t) => At(face + outward * t) - critical;
        bool solid = Excess(0) >= 0;
        for (double near = 0, limit = solid ? ahead : behind; near < limit; )
        {
            double far = Math.Min(limit, near + step),
                sign = solid ? 1 : -1;
            if (Excess(sign * far) >= 0 != solid)
                return Root.Between(Excess, sign * near, sign * far, 1e-7);
            near = far;
        }
        return null;
    }

    /// <summary>
    /// The dose of every pixel's middle on the film side of every layer, from the last layer to the plate: D = D q + E
    /// M with transmission q, the layer's dose E and its blurred mask M. Two rasters of single precision are in memory.
    /// </summary>
    /// <returns>One layer after the other; each can be read until the next one is asked for.</returns>
    public IEnumerable<DoseLayer> Layers()
    {
        var sweep = new DoseSweep(Masks.Grid, Blur);
        for (int layer = Masks.Count - 1; layer >= 0; layer--)
        {
            sweep.Expose(Masks[layer], (float)Light.DoseOf(layer), (float)Light.Transmission);
            yield return new DoseLayer(layer, Masks.FilmZ(layer), Masks.Grid, sweep);
        }
    }
}
