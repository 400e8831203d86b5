using System.Globalization;
using CalibGeom.Verification.Logs;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>What slot comb and bridge say of light in depth.</summary>
internal static class LightWords
{
    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        if (result.PrintThrough is not { } light)
            yield break;
        SlotOutcome? comb = result.Trials.LastOrDefault(t => t.Slots is not null)?.Slots;
        if (!light.Known && comb is not null)
        {
            bool open = comb.Open == comb.Heights.Count;
            yield return Note(
                "print-through",
                open
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $"Every slot was open: light passes through a ceiling by "
                            + $"less than about {comb.Heights[0]:0.00#} mm; dose and Dp "
                            + $"are not known."
                    )
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"Every slot was closed: light passes through a ceiling by "
                            + $"more than about {comb.Heights[^1]:0.00#} mm; dose and Dp "
                            + $"are not known."
                    ),
                open ? ""
                    : comb.HighestClosed >= result.Options.MostPrintThrough
                        ? "Look whether uncured resin sits in them, and wash it out; light does not go up meanwhile."
                    : "Look whether uncured resin sits in them, and wash it out.",
                KnownFeatures.SlotsOpen
            );
            yield break;
        }
        bool byBridge = comb is null && result.Trials.Any(t => BridgeReading.Of(t) is not null);
        double time = result.Next.Settings.Time;
        var z = light.IntervalAt(time);
        yield return new Finding(
            "print-through",
            Severity.Note,
            byBridge ? KnownFeatures.BridgeThickness : KnownFeatures.SlotsOpen,
            string.Create(
                CultureInfo.InvariantCulture,
                $"With {time:0.###} s, light passes through a ceiling by "
                    + $"about {light.At(time).Mean:0.00} mm ({Math.Max(0, z.Low):0.00} "
                    + $"to {z.High:0.00}), {(byBridge ? "by which a level beam comes out thicker" : "which closes lower tunnels")}; one exposure "
                    + $"cures about {Math.Max(0, light.CuredLayers(time, result.Conditions.Layer)):0.0} layers."
            ),
            ""
        )
        {
            Value = light.At(time).Mean,
            Unit = "mm",
        };
    }
}
