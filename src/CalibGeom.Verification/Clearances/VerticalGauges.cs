using System.Globalization;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>What slots, the bridge, the squeeze tab and box heights say about Z.</summary>
internal static class VerticalGauges
{
    /// <summary>
    /// Light closes the low slots: print-through lies between the highest closed and the lowest open one. Null when the
    /// table does not tell the slots' heights.
    /// </summary>
    internal static Bracket? CombOf(MatchedReadings matched)
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
    /// Light that passes through the bridge's beam makes it thicker: print-through lies within two standard
    /// uncertainties of that, the caliper's own error in them. Null when it was not read.
    /// </summary>
    internal static Bracket? BridgeOf(MatchedReadings matched, PredictionOptions options)
    {
        ReadingGroup[] thickness = [.. matched.Sizes.Where(g => g.Id == KnownFeatures.BridgeThickness)];
        if (thickness.Length == 0)
            return null;
        var system = new LinearSystem(1);
        AddAll(system, [matched], options, thickness, _ => [1], 1);
        system.Solve();
        Estimate through = Estimate.Of(system.Predict(new LinearTarget(0, [1], [])));
        double reach = 2 * through.StandardUncertainty;
        return new Bracket(Math.Max(0, through.Value - reach), Math.Max(0, through.Value + reach));
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
            .Sizes.Where(g => IsHeight(g.Id) && matched.Features[g.Id].Nominal > 0)
            .ToArray();
        if (heights.Length == 0)
            return null;
        var system = new LinearSystem(1);
        AddAll(system, [matched], options, heights, g => [matched.Features[g.Id].Nominal], 1);
        system.Solve();
        return Estimate.Of(system.Predict(new LinearTarget(0, [1], [])));
    }

    /// <summary>
    /// What the plinth's thickness lacks: it stands on the plate, so the lowest layers are in it. Of several prints the
    /// mean.
    /// </summary>
    internal static Estimate? LostOf(IReadOnlyList<MatchedReadings> prints, PredictionOptions options)
    {
        ReadingGroup[] thickness = prints.SelectMany(p => p.Sizes).Where(g => IsThickness(g.Id)).ToArray();
        if (thickness.Length == 0)
            return null;
        var system = new LinearSystem(1);
        AddAll(system, prints, options, thickness, _ => [-1], 1);
        system.Solve();
        return Estimate.Of(system.Predict(new LinearTarget(0, [1], [])));
    }

    private static bool IsThickness(FeatureId id) => id == KnownFeatures.PlinthThickness;

    private static bool IsBetweenOutsideJaws(FeatureId id) => IsThickness(id) || id == KnownFeatures.BridgeThickness;

    private static bool IsHeight(FeatureId id) => id is { Part: KnownFeatures.Box, Size: KnownFeatures.Height };

    /// <summary>Rows of vertical sizes and of what was read of gauges with the same jaws.</summary>
    private static void AddAll(
        LinearSystem system,
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        ReadingGroup[] groups,
        Func<ReadingGroup, double[]> coefficients,
        int count
    )
    {
        var settings = new FitSettings(options.FormError, PrintVariation.Assumed(options, prints.Count));
        var rows = new ModelRows(system, options, settings, RepeatScatter.Of(prints, options), []);
        for (int n = 0; n < groups.Length; n++)
        {
            ReadingGroup g = groups[n];
            double nominal = prints[0].Features[g.Id].Nominal;
            var errors = new List<(int, double)>
            {
                (
                    system.Source(
                        string.Create(CultureInfo.InvariantCulture, $"form.{n}"),
                        "form of faces",
                        options.FormError,
                        InputShape.Normal
                    ),
                    1
                ),
            };
            Jaw jaw = g.Instrument.Jaw ?? (IsBetweenOutsideJaws(g.Id) ? Jaw.Outside : Jaw.Depth);
            rows.AddInstrument(errors, g, jaw, nominal, string.Create(CultureInfo.InvariantCulture, $"{n}"));
            system.Add(g.Mean - nominal, coefficients(g), [.. errors]);
        }
        for (int p = 0; p < prints.Count; p++)
            foreach (ReadingGroup g in prints[p].References)
                rows.AddReference(g, p, new double[count]);
    }
}
