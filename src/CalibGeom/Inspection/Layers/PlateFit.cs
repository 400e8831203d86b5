using CalibGeom.Meshes;
using CalibGeom.Plates;

namespace CalibGeom.Inspection.Layers;

/// <summary>Whether a mesh has room on a plate, wherever on it the slicer sets it.</summary>
internal static class PlateFit
{
    private const double Slack = 1e-3;

    /// <summary>A finding for each direction in which the mesh is larger than the plate without its margin.</summary>
    internal static IEnumerable<Finding> Check(Box3D bounds, Plate plate)
    {
        Vector3D size = bounds.Size;
        double width = plate.Width - 2 * plate.Margin,
            depth = plate.Depth - 2 * plate.Margin;
        string remedy =
            size.X <= depth + Slack && size.Y <= width + Slack
                ? "Turn the part by 90 degrees about Z: its width and depth fit then."
                : "Turn or tilt the part, split it, or make it smaller.";
        if (TooLarge("width (x)", size.X, width, remedy) is { } inX)
            yield return inX;
        if (TooLarge("depth (y)", size.Y, depth, remedy) is { } inY)
            yield return inY;
        if (
            plate.Height is { } height
            && TooLarge("height (z)", size.Z, height, "Lay or tilt the part, split it, or make it lower.") is { } inZ
        )
            yield return inZ;
    }

    private static Finding? TooLarge(string what, double value, double limit, string remedy) =>
        value <= limit + Slack
            ? null
            : new Finding(
                "larger-than-plate",
                Severity.Error,
                "",
                FormattableString.Invariant(
                    $"The part's {what} is {value:0.###} mm; the plate allows {limit:0.###} mm."
                ),
                remedy
            )
            {
                Value = value,
                Limit = limit,
                Unit = "mm",
            };
}
