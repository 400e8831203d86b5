using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Tuning.Policy;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>
/// When prints that should be alike are not: the only case in which the machine is named. Causes are common practice,
/// without a source.
/// </summary>
internal static class MachineWords
{
    private const int SlotSteps = 3;
    private const double Surely = 4;

    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        Trial last = result.Trials[^1];
        Trial[] alike = [.. result.Trials.SkipLast(1).Where(t => t.Settings.SameProcess(last.Settings))];
        if (Planner.NothingPrinted(last))
            yield return new Finding(
                "nothing-printed",
                Severity.Warning,
                "",
                last.Joints.Count > 0 ? "All columns were lost and no box was read." : "All columns were lost.",
                "Base exposure, level of the plate, its surface and the film come before any fine tuning."
            );
        // What was kept apart because it is older says what has moved all the same.
        Trial[] older =
        [
            .. result
                .KeptApart.Select(k => k.Trial)
                .Where(t => t.Conditions.DifferencesFrom(result.Conditions).Count == 0),
            .. result.Trials.SkipLast(1),
        ];
        if (last.Slots is { } comb && older.Any(t => Contradicts(t, last, comb)))
            yield return LightChanged(
                KnownFeatures.SlotsOpen,
                "The slots of the last print do not fit those of an earlier one"
            );
        if (BridgeReading.Of(last) is { } bridge && older.Any(t => Contradicts(t, last, bridge)))
            yield return LightChanged(
                KnownFeatures.BridgeThickness,
                "The bridge of the last print does not fit that of an earlier one"
            );
        double widest = result.Options.Priors.BetweenPrints.At(Coverage.NormalFactor);
        if (alike.Any(t => Growth(t) is { } a && Growth(last) is { } b && Math.Abs(a - b) > Limit(t, last, widest)))
            yield return new Finding(
                "repeat-differs",
                Severity.Warning,
                "",
                TuningWords.Text(
                    $"Prints with the same exposure and rest differ by more than prints do, whose growth has a standard deviation of {widest:0.0000} mm at the most."
                ),
                "Vat temperature, film (slack, cloudy), Z axis (play, dirt) "
                    + "and whether it is the same resin, stirred, are where to look."
            );
    }

    private static Finding LightChanged(string subject, string what) =>
        new(
            "light-changed",
            Severity.Warning,
            subject,
            $"{what}: the light was not what the exposure says.",
            "Lamp, screen and glass (dust, cured spots), and whether the resin was stirred, are where to look."
        );

    // More light and a clearly thinner beam, or less light and a clearly thicker one.
    private static bool Contradicts(Trial earlier, Trial last, BridgeReading bridge)
    {
        if (BridgeReading.Of(earlier) is not { } before)
            return false;
        double thicker = bridge.Value - before.Value,
            between = TrendOptions.Default.BetweenThroughs,
            bias = before.Instrument == bridge.Instrument ? 0 : Instrument.DefaultOutsideError,
            limit =
                Surely
                * Math.Sqrt(
                    before.Uncertainty * before.Uncertainty
                        + bridge.Uncertainty * bridge.Uncertainty
                        + 2 * (between * between + bias * bias)
                );
        return (last.Settings.Time >= earlier.Settings.Time && thicker < -limit)
            || (last.Settings.Time <= earlier.Settings.Time && thicker > limit);
    }

    // More light and clearly more open slots, or less light and clearly fewer.
    private static bool Contradicts(Trial earlier, Trial last, SlotOutcome comb) =>
        earlier.Slots is { } before
        && before.Heights.Count == comb.Heights.Count
        && (
            (last.Settings.Time >= earlier.Settings.Time && comb.Open >= before.Open + SlotSteps)
            || (last.Settings.Time <= earlier.Settings.Time && comb.Open <= before.Open - SlotSteps)
        );

    private static double? Growth(Trial t) =>
        t.GrowthX is { } x && t.GrowthY is { } y ? (x.Value + y.Value) / 2 - t.Settings.EdgeOffset : null;

    private static double Limit(Trial a, Trial b, double between)
    {
        double u = a.GrowthX!.Uncertainty,
            v = b.GrowthX!.Uncertainty,
            bias = a.Instrument == b.Instrument ? 0 : a.GrowthX.Bias * a.GrowthX.Bias + b.GrowthX.Bias * b.GrowthX.Bias;
        return Surely * Math.Sqrt(2 * between * between + u * u + v * v + bias);
    }
}
