namespace CalibGeom.Plates;

/// <summary>What is worth saying about parts on a plate.</summary>
internal static class PartFindings
{
    private const double Slack = 1e-3;

    internal static IReadOnlyList<Finding> Of(PlateLayout layout) =>
        layout.Surveys.SelectMany(s => Of(layout, s)).ToArray();

    private static IEnumerable<Finding> Of(PlateLayout layout, PartSurvey part)
    {
        Plate plate = layout.Plate;
        double above = part.Bounds.Min.Z - layout.BaseZ;
        double beyond = new[]
        {
            plate.MinX - part.Bounds.Min.X,
            part.Bounds.Max.X - plate.MaxX,
            plate.MinY - part.Bounds.Min.Y,
            part.Bounds.Max.Y - plate.MaxY,
        }.Max();
        if (!part.IsClosed)
            yield return new(
                "part-open",
                Severity.Warning,
                part.Name,
                "The surface is not closed: some edges have no opposite.",
                "The coupon keeps clear of every triangle all the same; look at the part with calibgeom inspect."
            );
        if (above > Slack)
            yield return Measured(
                "part-floats",
                Severity.Note,
                part,
                $"The part floats {above:0.###} mm above the height at which the coupon stands.",
                "This is right for a part on supports that the slicer adds.",
                above
            );
        else if (layout.BaseZ > Slack)
            yield return Measured(
                "part-floats",
                Severity.Warning,
                part,
                $"The part's lowest point is {layout.BaseZ:0.###} mm above z = 0, and the coupon stands as high.",
                "Right where the slicer sets both down on the plate; where supports will lift the part, let the "
                    + "coupon stand at z = 0 instead of at the parts' lowest point.",
                layout.BaseZ
            );
        if (above < -Slack)
            yield return Measured(
                "part-below-plate",
                Severity.Warning,
                part,
                $"The part reaches {-above:0.###} mm below the height at which the coupon stands.",
                "Let the coupon stand at the parts' lowest point, or lift the part.",
                -above
            );
        if (beyond > Slack)
            yield return Measured(
                "part-off-plate",
                Severity.Warning,
                part,
                $"The part reaches {beyond:0.###} mm beyond the plate.",
                "Check the plate's size, and where its origin is; parts that the slicer will centre need a "
                    + "plate centred on them.",
                beyond
            );
        if (plate.Height is { } height && part.Bounds.Max.Z - height > Slack)
            yield return Measured(
                "part-too-high",
                Severity.Warning,
                part,
                $"The part reaches {part.Bounds.Max.Z - height:0.###} mm higher than the plate allows.",
                "Check the plate's height.",
                part.Bounds.Max.Z - height
            );
    }

    private static Finding Measured(
        string rule,
        Severity severity,
        PartSurvey part,
        FormattableString message,
        string remedy,
        double value
    ) =>
        new(rule, severity, part.Name, FormattableString.Invariant(message), remedy)
        {
            Value = value,
            Limit = 0,
            Unit = "mm",
        };
}
