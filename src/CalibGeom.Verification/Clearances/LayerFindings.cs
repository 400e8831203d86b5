using System.Globalization;

namespace CalibGeom.Verification.Clearances;

/// <summary>What the lowest layers lost, whether plinth and tab agree, and what to do.</summary>
internal static class LayerFindings
{
    internal static IEnumerable<Finding> Of(ClearancePrediction p)
    {
        if (p.LowestLayers is not { } layers)
            yield break;
        if (layers.TabDisagrees == true)
            yield return new Finding(
                "squeeze-contradicts",
                Severity.Warning,
                KnownFeatures.PlinthThickness,
                Say(
                    $"The plinth lost {layers.Lost.Value:0.000} mm (give or take {layers.Lost.Expanded:0.000}), the squeeze tab says {Between(p.Squeeze!)}."
                ),
                "Count the tab's slots again, with a film or a wire of 0.1 mm; read the plinth on its pad, away from its chamfer."
            );
        else if (layers.Distinct)
            yield return new Finding(
                layers.Lost.Value > 0 ? "lowest-layers-squeezed" : "lowest-layers-thick",
                Severity.Note,
                KnownFeatures.PlinthThickness,
                Say(
                    $"The lowest layers {(layers.Lost.Value > 0 ? "lost" : "gained")} {Math.Abs(layers.Lost.Value):0.000} mm, give or take {layers.Lost.Expanded:0.000}."
                ),
                layers.Lost.Value > 0
                    ? "Level the plate and set its zero again; shorten the base exposure if edges flare; rest longer before the first layers."
                    : "Set the plate's zero lower: look for cured resin under it, then level it again."
            )
            {
                Value = layers.Lost.Value,
                Unit = "mm",
            };
    }

    private static string Between(Bracket b) =>
        double.IsFinite(b.High) ? Say($"{b.Low:0.00} to {b.High:0.00} mm") : Say($"over {b.Low:0.00} mm");

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
