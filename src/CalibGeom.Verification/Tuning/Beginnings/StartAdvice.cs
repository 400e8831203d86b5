using System.Globalization;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning.Beginnings;

/// <summary>
/// The first exposure, rest and base exposure of a resin that has not been printed, why, and how unsure they are. A
/// start, never a setting. Immutable.
/// </summary>
/// <param name="Settings">First exposure and rest; no edge offset.</param>
/// <param name="Range">The exposures between which the right one lies in 95 % of cases, s.</param>
/// <param name="BaseLayers">Number of base layers.</param>
/// <param name="BaseTime">Their exposure, s.</param>
/// <param name="Reason">Where it comes from.</param>
public sealed record StartAdvice(
    ExposureSettings Settings,
    Interval Range,
    int BaseLayers,
    double BaseTime,
    string Reason
)
{
    // Common practice, without a source.
    private const double FirstRest = 1,
        BaseRatio = 10,
        MakerFactor = 1.8,
        NeighbourFactor = 1.5,
        AimedLayers = 2;
    private const int FirstBaseLayers = ProcessDefaults.BaseLayers;

    /// <summary>From the time that the resin's maker names for some printer of the kind.</summary>
    /// <param name="time">That time, s, above 0 and at most 600.</param>
    /// <param name="layer">Layer height to print with, mm, above 0 and at most 1.</param>
    /// <param name="makerLayer">The layer height it is meant for, mm; null when it is the same.</param>
    /// <param name="priors">What is believed of Dp; defaults when null.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static StartAdvice OfMaker(
        double time,
        double layer,
        double? makerLayer = null,
        ExposurePriors? priors = null
    )
    {
        Require.Positive(time, ExposureSettings.Longest, "maker's time", "s", nameof(time));
        double before = Checked(makerLayer ?? layer, nameof(makerLayer)),
            moved = Moved(time, before, Checked(layer, nameof(layer)), priors);
        string why =
            before == layer
                ? "the maker's time; printers of one kind differ in light by about this much (common practice)"
                : FormattableString.Invariant(
                    $"the maker's {time:0.##} s for layers of {before:0.###} mm, carried over to {layer:0.###} mm"
                );
        return Of(moved, FirstRest, MakerFactor, null, why);
    }

    /// <summary>
    /// From a working curve and the irradiance of the printer: the time in which one exposure cures two layers.
    /// </summary>
    /// <param name="quoted">The curve and the irradiance.</param>
    /// <param name="layer">Layer height, mm, above 0 and at most 1.</param>
    /// <exception cref="ArgumentException">The layer height is out of range, or the time would be.</exception>
    public static StartAdvice OfCurve(QuotedLight quoted, double layer)
    {
        ArgumentNullException.ThrowIfNull(quoted);
        double depth = AimedLayers * Checked(layer, nameof(layer)),
            time = quoted.TimeFor(depth),
            deviation = Math.Sqrt(
                Math.Pow(QuotedLight.DoseDeviation, 2)
                    + Math.Pow(QuotedLight.DepthDeviation * depth / quoted.PenetrationDepth, 2)
            );
        return Of(
            time,
            FirstRest,
            Math.Exp(Coverage.NormalFactor * deviation),
            null,
            "one exposure cures two layers by the quoted curve; 24 laboratories "
                + "measured one resin and differed by up to 7 times in Dp "
                + "and 70 times in Ec (Kolibaba et al., Additive Manufacturing 84 (2024) 104082)"
        );
    }

    /// <summary>From the log of a neighbour: a resin of the same kind, or another layer height.</summary>
    /// <param name="trials">The neighbour's trials, at least one.</param>
    /// <param name="layer">Layer height to print with, mm, above 0 and at most 1.</param>
    /// <param name="options">What was wanted of the neighbour; defaults when null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">There is no trial, or the layer height is out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static StartAdvice OfNeighbour(
        IReadOnlyList<Trial> trials,
        double layer,
        TuneOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(trials);
        if (trials.Count == 0)
            throw new ArgumentException("There is no trial to learn from.", nameof(trials));
        Trial last = trials[^1];
        ExposureSettings kept = Tuner.Run(trials, options, null, cancellation).Next.Keep;
        double moved = Moved(kept.Time, last.Conditions.Layer, Checked(layer, nameof(layer)), options?.Priors);
        return Of(
            moved,
            kept.Rest,
            NeighbourFactor,
            last.Cycle,
            string.Create(
                CultureInfo.InvariantCulture,
                $"what the log keeps ({kept.Time:0.###} s at layers of {last.Conditions.Layer:0.###} "
                    + $"mm), carried over to {layer:0.###} mm; its edge offset "
                    + $"is not taken over"
            )
        );
    }

    private static StartAdvice Of(double time, double rest, double factor, LayerCycle? cycle, string why)
    {
        double rounded = Math.Round(time, 2);
        return new StartAdvice(
            new ExposureSettings(Math.Max(0.01, rounded), rest),
            new Interval(time / factor, time * factor),
            cycle?.BaseLayers ?? FirstBaseLayers,
            Math.Round(cycle?.BaseTime ?? Math.Min(600, BaseRatio * time), 1),
            why
        );
    }

    // One exposure shall cure as many micrometres beyond its layer as before: exp(change / Dp).
    private static double Moved(double time, double from, double to, ExposurePriors? priors) =>
        time * Math.Exp((to - from) / (priors ?? ExposurePriors.Default).PenetrationDepth.Median);

    private static double Checked(double layer, string parameter) =>
        Require.Positive(layer, 1, "layer height", "mm", parameter);
}
