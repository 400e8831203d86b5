namespace CalibGeom.Verification.Maps;

/// <summary>What a map says, in sentences that do not contradict each other.</summary>
public static class MapWords
{
    /// <summary>The answer: first whether the light differs, then where, then what to do.</summary>
    /// <param name="map">The map.</param>
    public static IReadOnlyList<Finding> Check(MapResult map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var findings = new List<Finding>();
        void Say(string rule, Severity severity, string message, string remedy = "") =>
            findings.Add(new Finding(rule, severity, "", message, remedy));

        int coupons = map.Places.Count;
        if (!map.Differs)
            Say(
                "map-even",
                Severity.Note,
                Text($"No difference over the plate is seen in {coupons} coupons. {CouldHide(map)}"),
                MapDoubts.HasSeveralCalipers(map)
                    ? "Read all coupons with one caliper: by several the plate cannot be called even."
                    : "Keep one exposure for the whole plate."
            );
        else
        {
            Say(
                "map-uneven",
                Severity.Warning,
                Text($"The light differs over the plate (chance {Percent(map.Probability)}): {Shape(map)}."),
                map.WithinShare > 0.999
                    ? Exposure(map)
                    : "Even out the panel's light first, if the machine allows it; then calibrate the exposure."
            );
            Say("map-weakest", Severity.Note, WeakestWords.Of(map.WeakestPlaces));
            Say("map-exposure", Severity.Note, Part(map));
        }
        findings.AddRange(MapDoubts.Of(map));
        if (map.Level is { } level)
            Say(
                "map-level",
                level.Tilted ? Severity.Warning : Severity.Note,
                level.Tilted
                    ? Text(
                        $"The first layers are not equally thick: {Even(level.AlongX):+0.00;-0.00} mm from left to right, {Even(level.AlongY):+0.00;-0.00} mm from front to back."
                    )
                    : "The thickness of the plinths shows no tilt of the plate.",
                level.Tilted ? "Level the plate; where it is too near, the first layers are squeezed." : ""
            );
        return findings;
    }

    private static string CouldHide(MapResult map)
    {
        double reach = map.Places.Max(p => (p.Fitted.High - p.Fitted.Low) / 2);
        return Text($"Each place is known to +-{100 * (Math.Exp(reach) - 1):0} % of light (95 %).");
    }

    private static string Shape(MapResult map) =>
        map.Shape switch
        {
            SurfaceShape.Bowl => "it rises or falls towards the middle",
            SurfaceShape.Plane when map.Plane?.Probability < 0.05 => "it falls from one side to the other",
            _ => Text(
                $"coupon {map.Places.MinBy(p => p.Own?.Value ?? 0)!.Point.Name} is the darkest, but no plane or bowl explains it"
            ),
        };

    private static string Exposure(MapResult map) =>
        Math.Abs(map.ExposureChange) < 0.005
            ? "The present exposure keeps every place within the limits."
            : Text(
                $"Multiply the exposure by {Math.Exp(map.ExposureChange):0.00}: that keeps every place within the limits."
            );

    private static string Part(MapResult map)
    {
        string limits = Text(
            $"clearance within {map.Options.Tolerance:0.000} mm and light within {100 * map.Options.LightTolerance:0} % of what was calibrated"
        );
        if (map.WithinShare > 0.999)
            return $"One exposure serves the whole plate: {limits}.";
        return map.Within is { } part
            ? Text(
                $"No exposure serves the whole plate. Multiplied by {Math.Exp(map.ExposureChange):0.00} it serves {100 * map.WithinShare:0} % of it, the largest rectangle X {part.MinX:0} to {part.MaxX:0}, Y {part.MinY:0} to {part.MaxY:0} mm: {limits}."
            )
            : $"No exposure serves a useful part of the plate: {limits}.";
    }

    // A value that rounds to nothing from below would be written -+0.00.
    private static double Even(double mm) => Math.Round(mm, 2) + 0.0;

    private static string Percent(double p) => p < 0.001 ? "below 0.1 %" : Text($"{100 * p:0.0} %");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
