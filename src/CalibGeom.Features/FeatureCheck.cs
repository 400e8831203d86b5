namespace CalibGeom.Features;

/// <summary>What must hold of a feature that comes from a file.</summary>
internal static class FeatureCheck
{
    private static readonly string[] Units = ["mm", "count", "stage", "fit"];
    private static readonly string[] Axes = ["", "x", "y", "z"];

    /// <summary>What is wrong with a feature, or null.</summary>
    internal static string? ProblemOf(Feature feature)
    {
        if (string.IsNullOrWhiteSpace(feature.Id))
            return "the feature has no id.";
        if (!double.IsFinite(feature.Nominal))
            return $"the nominal of {feature.Id} is no finite number.";
        if (!Units.Contains(feature.Unit))
            return $"the unit of {feature.Id} is \"{feature.Unit}\"; units are {string.Join(", ", Units)}.";
        return Axes.Contains(feature.Axis)
            ? null
            : $"the axis of {feature.Id} is \"{feature.Axis}\"; axes are x, y, z or empty.";
    }

    /// <summary>Whether a text is 16 lower-case hex digits.</summary>
    internal static bool IsDigest(string text) => text.Length == 16 && text.All(char.IsAsciiHexDigitLower);
}
