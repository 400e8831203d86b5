using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>What slots, the squeeze tab and box heights say about Z.</summary>
internal static class VerticalGauges
{
    /// <summary>
    /// Light closes the low slots: print-through lies between the highest closed and the lowest open one. Null when the
    /// table does not tell the slots' heights.
    /// </summary>
    internal static Bracket? PrintThroughOf(MatchedReadings matched)
    {
        if (matched.CountOf(KnownFeatures.SlotsOpen) is not { } open)
            return null;
        double[] heights = matched.Table.Find(KnownFeatures.SlotsOpen)!.Openings.Order().ToArray();
        if (heights.Length == 0 || open > heights.Length)
            return null;
        int closed = heights.Length - open;
        return new Bracket(
            closed == 0 ? 0 : heights[closed - 1],
            closed < heights.Length ? heights[closed] : double.PositiveInfinity
        );
    }

    /// <summary>
    /// From the plate upward each closed slot of the tab lost what print-through left of it; the first open one lost
    /// less. Null when print-through alone could close every slot.
    /// </summary>
    internal static Bracket? SqueezeOf(MatchedReadings matched, Bracket? printThrough)
    {
        if (
            matched.CountOf(KnownFeatures.SqueezeOpen) is not { } open
            || printThrough is null
            || matched.Table.Find(KnownFeatures.SqueezeOpen)?.Openings is not { Count: > 0 } slots
        )
            return null;
        if (printThrough.High >= slots.Max() || open > slots.Count)
            return null;
        int closed = slots.Count - open;
        double high = closed < slots.Count ? Lost(slots, closed + 1, printThrough.Low) : double.PositiveInfinity;
        return new Bracket(Lost(slots, closed, printThrough.High), high);
    }

    /// <summary>What the lowest slots have lost in all when they are closed.</summary>
    private static double Lost(IEnumerable<double> slots, int closed, double printThrough) =>
        slots.Take(closed).Sum(h => Math.Max(0, h - printThrough));

    /// <summary>A line through the origin over the boxes' heights, which are read with the depth rod.</summary>
    internal static Estimate? HeightScaleOf(MatchedReadings matched, PredictionOptions options)
    {
        ReadingGroup[] heights = matched
            .Sizes.Where(g =>
                g.Id is { Part: KnownFeatures.Box, Size: KnownFeatures.Height } && matched.Features[g.Id].Nominal > 0
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
}
