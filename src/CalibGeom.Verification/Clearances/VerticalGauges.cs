using System.Globalization;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>What slots, the squeeze tab and box heights say about Z.</summary>
internal static class VerticalGauges
{
    /// <summary>Heights of the slot comb when the table does not list them: R10 from 0.16 mm (ISO 3).</summary>
    private static readonly double[] CommonHeights = [0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8];

    private const double CommonSqueezeSlot = 0.5;

    /// <summary>
    /// Light closes the low slots: print-through lies between the highest closed and the lowest open one.
    /// </summary>
    internal static Bracket? PrintThroughOf(MatchedReadings matched)
    {
        if (matched.CountOf("slots.open") is not { } open)
            return null;
        double[] heights = Heights(matched);
        if (open > heights.Length)
            return null;
        int closed = heights.Length - open;
        return new Bracket(
            closed == 0 ? 0 : heights[closed - 1],
            closed < heights.Length ? heights[closed] : double.PositiveInfinity
        );
    }

    /// <summary>
    /// Each closed slot of the tab lost what print-through left of it; the first open one lost less. Null when
    /// print-through alone could close a slot.
    /// </summary>
    internal static Bracket? SqueezeOf(MatchedReadings matched, Bracket? printThrough)
    {
        if (
            matched.CountOf("squeeze.open") is not { } open
            || printThrough is null
            || !matched.Features.TryGetValue("squeeze.open", out Feature? feature)
        )
            return null;
        double height = matched.Features.TryGetValue("squeeze.height", out Feature? h) ? h.Nominal : CommonSqueezeSlot;
        if (printThrough.High >= height || open > feature.Nominal)
            return null;
        int closed = (int)feature.Nominal - open;
        double high =
            closed < (int)feature.Nominal ? (closed + 1) * (height - printThrough.Low) : double.PositiveInfinity;
        return new Bracket(closed * (height - printThrough.High), high);
    }

    /// <summary>A line through the origin over the boxes' heights, which are read with the depth rod.</summary>
    internal static Estimate? HeightScaleOf(MatchedReadings matched, PredictionOptions options)
    {
        ReadingGroup[] heights = matched
            .Sizes.Where(g =>
                g.Id.StartsWith("box", StringComparison.Ordinal)
                && g.Id.EndsWith(".height", StringComparison.Ordinal)
                && matched.Features[g.Id].Nominal > 0
            )
            .ToArray();
        if (heights.Length == 0)
            return null;
        var system = new LinearSystem(1);
        foreach (ReadingGroup g in heights)
        {
            double nominal = matched.Features[g.Id].Nominal;
            Jaw jaw = g.Instrument.Jaw ?? Jaw.Depth;
            double s = g.Instrument.Repeatability ?? Instrument.DefaultRepeatability;
            double freedom = g.Instrument.Repeatability is null
                ? options.RepeatabilityDegreesOfFreedom
                : double.PositiveInfinity;
            system.Add(
                g.Mean - nominal,
                [nominal],
                (system.Source($"form.{g.Id}", "form of faces", options.FormError, InputShape.Normal), 1),
                (
                    system.Source(
                        $"jaw.{g.Instrument.Name}.{jaw}",
                        $"{ReadingWords.Of(jaw)} faces",
                        g.Instrument.ErrorOf(jaw),
                        InputShape.Rectangular
                    ),
                    1
                ),
                (
                    system.Source(
                        $"step.{g.Id}.{g.Instrument.Name}",
                        "display step",
                        g.Instrument.Resolution / Math.Sqrt(12),
                        InputShape.Rectangular
                    ),
                    1
                ),
                (
                    system.Source(
                        $"scatter.{g.Id}.{g.Instrument.Name}",
                        "repeatability",
                        s / Math.Sqrt(g.Count),
                        InputShape.Normal,
                        freedom,
                        Evaluation.A
                    ),
                    1
                )
            );
        }
        system.Solve();
        return Estimate.Of(system.Predict(new LinearTarget(0, [1], [])));
    }

    private static double[] Heights(MatchedReadings matched)
    {
        double[] listed = Enumerable
            .Range(1, 99)
            .Select(i => string.Create(CultureInfo.InvariantCulture, $"slot{i}.height"))
            .Where(matched.Features.ContainsKey)
            .Select(id => matched.Features[id].Nominal)
            .Order()
            .ToArray();
        if (listed.Length > 0)
            return listed;
        int count = matched.Features.TryGetValue("slots.open", out Feature? f) ? (int)f.Nominal : CommonHeights.Length;
        return CommonHeights[..Math.Clamp(count, 1, CommonHeights.Length)];
    }
}
