using CalibGeom.Features.Files;

namespace CalibGeom.Features;

/// <summary>What must hold of a feature that comes from a file.</summary>
internal static class FeatureCheck
{
    private static readonly string[] Units = ["mm", "count", "stage", "fit"];
    private static readonly string[] Axes = ["", "x", "y", "z"];

    /// <summary>The id that a text is.</summary>
    /// <exception cref="InputException">It is none.</exception>
    internal static FeatureId ToId(string text) =>
        FeatureId.TryParse(text)
        ?? throw new InputException(
            InputIds.FeatureTable,
            text.Trim().Length == 0 ? "the feature has no id." : $"\"{text}\" is no feature id, such as box1.outside.x."
        );

    /// <summary>An instruction that a spreadsheet takes for text.</summary>
    /// <exception cref="InputException">It begins as a formula does.</exception>
    internal static string ToInstruction(string how) =>
        CsvText.BeginsAsFormula(how) ? throw new InputException(InputIds.FeatureTable, FormulaProblem(how)) : how;

    /// <summary>What is wrong with an instruction that begins as a formula does.</summary>
    internal static string FormulaProblem(string how) =>
        $"the instruction \"{how}\" begins as a formula does, and a spreadsheet would take it for one. Begin it with a word.";

    /// <summary>The feature, when it is sound.</summary>
    /// <exception cref="InputException">It is not.</exception>
    internal static Feature Checked(Feature feature) =>
        ProblemOf(feature) is { } problem ? throw new InputException(InputIds.FeatureTable, problem) : feature;

    private static string? ProblemOf(Feature feature)
    {
        if (!double.IsFinite(feature.Nominal))
            return $"the nominal of {feature.Id} is no finite number.";
        if (!Units.Contains(feature.Unit))
            return $"the unit of {feature.Id} is \"{feature.Unit}\"; units are {string.Join(", ", Units)}.";
        if (!Axes.Contains(feature.Axis))
            return $"the axis of {feature.Id} is \"{feature.Axis}\"; axes are x, y, z or empty.";
        if (feature.HeadDiameter is { } head && !(head > 0 && double.IsFinite(head)))
            return $"the head of {feature.Id} has no diameter above 0.";
        if (feature.Spot is { Row: < 1 } or { Place: < 1 })
            return $"the spot of {feature.Id} has a row or place below 1.";
        return feature.Openings.Any(o => !(o > 0 && double.IsFinite(o)))
            ? $"an opening of {feature.Id} has no height above 0."
            : null;
    }

    /// <summary>Whether a text is 16 lower-case hex digits.</summary>
    internal static bool IsDigest(string text) => text.Length == 16 && text.All(char.IsAsciiHexDigitLower);
}
