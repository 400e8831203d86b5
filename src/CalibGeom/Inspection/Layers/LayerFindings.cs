using System.Globalization;
using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Layers;

/// <summary>From what the layers show to findings in words.</summary>
internal static class LayerFindings
{
    /// <summary>More of one rule than this are counted in one finding.</summary>
    internal const int MostOfARule = 10;

    // Degrees; a step of one layer beyond the limit of 0.5 mm is flatter.
    private const double LevelStep = 6;

    /// <summary>mm3; less resin than this is told in one sentence for all places.</summary>
    private const double LeastCavity = 0.01;

    internal static IReadOnlyList<Finding> Of(LayerReport report, Func<Vector3D, string>? nameOf)
    {
        var findings = new List<Finding>();
        LayerDefect[] pockets = report.Defects.Where(d => IsPocket(d, report.Settings)).ToArray();
        bool together = pockets.Length > 1;
        foreach (
            var rule in report
                .Defects.Where(d => !IsTiny(d) && !(together && IsPocket(d, report.Settings)))
                .Select(d => Describe(d, report.Settings, nameOf))
                .GroupBy(f => (f.Rule, f.Severity))
        )
        {
            Finding[] sorted = rule.OrderBy(f => f.Rule is "thin-wall" or "thin-gap" ? f.Value : -f.Value).ToArray();
            findings.AddRange(sorted.Take(MostOfARule));
            if (sorted.Length > MostOfARule)
                findings.Add(
                    new Finding(
                        rule.Key.Rule,
                        rule.Key.Severity,
                        "",
                        $"There are {sorted.Length - MostOfARule} more of these, none worse.",
                        ""
                    )
                );
        }
        if (together)
            findings.Add(Pockets(pockets, report.Settings, nameOf));
        if (Tiny(report.Defects.Where(IsTiny).ToArray()) is { } tiny)
            findings.Add(tiny);
        if (report.Layers.All(l => l.Area == 0))
            findings.Add(
                new Finding(
                    "nothing-prints",
                    Severity.Error,
                    "",
                    FormattableString.Invariant($"No layer of {report.Settings.LayerHeight} mm holds any material."),
                    "Check that the mesh has triangles, is in millimetres and is thicker than a layer."
                )
            );
        if (report.Settings.Plate is { } plate)
            findings.AddRange(PlateFit.Check(report.Bounds, plate));
        return findings.OrderByDescending(f => f.Severity).ToArray();
    }

    private static bool IsTiny(LayerDefect d) =>
        d.Kind is LayerDefectKind.SuctionCup or LayerDefectKind.SealedVoid && d.Size < LeastCavity;

    /// <summary>Hollows of a few pixels say one thing together: that there are some.</summary>
    private static Finding? Tiny(LayerDefect[] defects) =>
        defects.Length == 0
            ? null
            : new Finding(
                "tiny-cavity",
                Severity.Note,
                "",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{defects.Length} {(defects.Length == 1 ? "hollow" : "hollows")} of less than {LeastCavity} mm3 "
                        + $"hold resin while they print."
                ),
                ""
            )
            {
                Value = defects.Length,
            };

    private static bool IsPocket(LayerDefect d, LayerSettings s) =>
        d.Kind == LayerDefectKind.SuctionCup && d.Size < s.SmallCavity && !IsTiny(d);

    /// <summary>Small pockets, as the insides of raised letters, say one thing together.</summary>
    private static Finding Pockets(LayerDefect[] pockets, LayerSettings settings, Func<Vector3D, string>? nameOf)
    {
        LayerDefect[] sorted = pockets.OrderByDescending(d => d.Size).ToArray();
        Finding[] each = sorted.Take(MostOfARule).Select(d => Describe(d, settings, nameOf)).ToArray();
        return each[0] with
        {
            Subject = "",
            Message = string.Create(
                CultureInfo.InvariantCulture,
                $"{sorted.Length} small pockets hold resin while they print, {sorted.Sum(d => d.Size):0.00} mm3 "
                    + $"together; the largest, {sorted[0].Size:0.00} mm3, {Where(sorted[0])}."
            ),
            Places = [.. each.SelectMany(f => f.Places)],
        };
    }

    private static string Where(LayerDefect d) =>
        FormattableString.Invariant(
            $"at x {Plain(d.Place.X):0.00}, y {Plain(d.Place.Y):0.00}, z {Plain(d.Place.Z):0.00} mm, "
        ) + (d.Layer == d.LastLayer ? $"layer {d.Layer}" : $"layers {d.Layer} to {d.LastLayer}");

    /// <summary>Without a minus before a zero.</summary>
    private static double Plain(double value) => Math.Round(value, 2) + 0.0;

    private static Finding Describe(LayerDefect d, LayerSettings s, Func<Vector3D, string>? nameOf)
    {
        double limit = s.MinimumPixels * Math.Max(s.PixelX, s.PixelY),
            pixel = Math.Max(s.PixelX, s.PixelY);
        (string rule, Severity severity, string text, string remedy, double? held, string unit) = d.Kind switch
        {
            LayerDefectKind.Island => (
                "island",
                Severity.Error,
                FormattableString.Invariant($"{d.Size:0.###} mm2 of material start in mid-air"),
                "Carry it with a support, or turn the part so that it grows from what is below.",
                (double?)null,
                "mm2"
            ),
            LayerDefectKind.Overhang => (
                "overhang",
                d.Size > s.FailingOverhang && d.Angle < OverhangLimits.Failing ? Severity.Error : Severity.Warning,
                d.Angle is > LevelStep
                    ? FormattableString.Invariant(
                        $"An underside of {d.Angle:0.#} degrees sticks out {d.Size:0.00} mm beyond what carries it"
                    )
                    : FormattableString.Invariant($"A layer sticks out {d.Size:0.00} mm beyond what carries it"),
                "Add a support or a 45 degree chamfer below it, or turn the part.",
                s.CarriedOverhang,
                "mm"
            ),
            LayerDefectKind.Bridge => (
                "bridge",
                d.Size > s.CarriedBridge ? Severity.Warning : Severity.Note,
                FormattableString.Invariant($"A layer spans {d.Size:0.00} mm between two sides"),
                d.Size > s.CarriedBridge ? "Arch the ceiling, shorten the span or support it." : "",
                s.CarriedBridge,
                "mm"
            ),
            LayerDefectKind.SuctionCup => (
                "suction-cup",
                d.Size < s.SmallCavity ? Severity.Note : Severity.Warning,
                FormattableString.Invariant($"{d.Size:0.00} mm3 of resin are trapped while these layers print"),
                d.Size < s.SmallCavity ? "" : "Vent it sideways at its end nearest the plate, or turn the part.",
                s.SmallCavity,
                "mm3"
            ),
            LayerDefectKind.SealedVoid => (
                "sealed-void",
                d.Size < s.SmallCavity ? Severity.Warning : Severity.Error,
                FormattableString.Invariant($"{d.Size:0.00} mm3 of resin stay enclosed for good"),
                "Open it with two holes, so that resin drains and the wash gets in, or fill it.",
                (double?)null,
                "mm3"
            ),
            LayerDefectKind.ThinWall => (
                "thin-wall",
                d.Size < pixel ? Severity.Error : Severity.Warning,
                FormattableString.Invariant($"A wall is {d.Size:0.000} mm thick, {d.Size / pixel:0.0} pixels"),
                "Thicken it: below two pixels its width depends on where pixels fall, below one it may vanish.",
                limit,
                "mm"
            ),
            LayerDefectKind.BetweenLayers => (
                "between-layers",
                Severity.Warning,
                FormattableString.Invariant(
                    $"{d.Size:0.###} mm2 of the mesh lie between two layers and are in neither"
                ),
                "Make them at least a layer thick, or take thinner layers.",
                (double?)null,
                "mm2"
            ),
            _ => (
                "thin-gap",
                Severity.Warning,
                FormattableString.Invariant($"A gap is {d.Size:0.000} mm wide, {d.Size / pixel:0.0} pixels"),
                "Widen it, or close it: light spreads into it from both sides.",
                limit,
                "mm"
            ),
        };
        string message = $"{text}, {Where(d)}.";
        string feature = nameOf?.Invoke(d.Place) ?? "";
        return new Finding(rule, severity, feature, message, remedy)
        {
            Value = Math.Round(d.Size, 6),
            Limit = held,
            Unit = unit,
            Places =
            [
                new FindingPlace(
                    d.Place.X,
                    d.Place.Y,
                    d.Place.Z,
                    feature,
                    d.Layer,
                    d.Layer == d.LastLayer ? null : d.LastLayer
                ),
            ],
        };
    }
}
