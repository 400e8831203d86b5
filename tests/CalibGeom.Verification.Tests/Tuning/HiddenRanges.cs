namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>What hidden printers are drawn from, and the rows of the table in docs/tune.md that say so.</summary>
internal static class HiddenRanges
{
    internal const double CaliperNoise = 0.0018,
        CaliperBias = 0.0015,
        BetweenPrints = 0.005,
        AxisDifference = 0.002,
        MostMisfit = 0.004,
        FirstMisfit = 0.012;
    internal const double TimeWave = 3,
        RestWave = 0.8,
        ThroughNoise = 0.010,
        FitNoise = 0.010;
    internal static readonly (double Low, double High) Blur = (0.015, 0.025),
        Depth = (0.08, 0.20),
        Critical = (4, 12),
        DoseRatio = (2, 6),
        Time = (1.5, 4),
        Rest = (0, 1);
    internal static readonly (double Median, double Low, double High) RestEffect = (0.006, 0.0015, 0.025),
        RestTime = (1.0, 0.4, 2.5);
    internal static readonly (double Low, double High) Limit = (0.3, 0.5),
        Slope = (6, 15),
        DoseExponent = (0.3, 0.8),
        LoadExponent = (0.15, 0.35);

    internal static IEnumerable<string> Rows() =>
        [
            Row("blur (Gaussian sigma)", $"{To(Blur)} mm"),
            Row("Dp; Ec", $"{To(Depth)} mm; {To(Critical)} mJ/cm2"),
            Row("accumulated dose at the first exposure", $"{To(DoseRatio)} Ec"),
            Row("first exposure; first rest", $"{To(Time)} s; {To(Rest)} s"),
            Row("growth", $"half-plane of the blurred dose (curved in ln t) - c (1 - exp(-r / tau)) + misfit"),
            Row("c", $"lognormal, median {RestEffect.Median} mm, cut at {RestEffect.Low} and {RestEffect.High} mm"),
            Row("tau", $"lognormal, median {RestTime.Median} s, cut at {RestTime.Low} and {RestTime.High} s"),
            Row(
                "misfit, not modelled by `tune`",
                $"amplitude 0 to {MostMisfit} mm times sin({TimeWave} ln(t / t0) + {RestWave} r + phase)"
            ),
            Row("first growth less target growth", $"-{FirstMisfit} to +{FirstMisfit} mm"),
            Row("between prints; X less Y", $"standard deviation {BetweenPrints}; {AxisDifference} mm"),
            Row(
                "reading error of a growth; bias of the caliper",
                $"standard deviation {CaliperNoise}; {CaliperBias} mm: three boxes, both faces, repeats, jaws "
                    + $"checked on a gauge block and a pin"
            ),
            Row("felt fit, two joints", $"thresholds 0, 0.02, 0.07 mm, standard deviation {FitNoise} mm"),
            Row("slot comb", $"print-through with a standard deviation of {ThroughNoise} mm"),
            Row(
                "columns",
                $"logit = k (ln(d / d0) + m ln(axis dose / 3 Ec) - w ln(load ratio / 16)), k {To(Slope)}, d0 "
                    + $"{To(Limit)} mm, m {To(DoseExponent)}, w {To(LoadExponent)}; rest does not matter"
            ),
        ];

    private static string Row(string what, string range) => $"| {what} | {range} |";

    private static string To((double Low, double High) range) =>
        FormattableString.Invariant($"{range.Low} to {range.High}");
}
