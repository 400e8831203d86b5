namespace CalibGeom.Features;

/// <summary>
/// One thing a check found: where, what was found, what the limit is and what to do about it. Immutable.
/// </summary>
/// <param name="Rule">Stable id of the rule in kebab-case, such as <c>wall-too-thin</c>.</param>
/// <param name="Severity">Error, warning or note.</param>
/// <param name="Subject">The feature id (<c>box1.outside.x</c>), spec path, file or place it is about; empty when it is
/// about the whole.</param>
/// <param name="Message">What was found, as a sentence with the value and its unit.</param>
/// <param name="Remedy">What to do about it, as a sentence; may be empty for notes.</param>
public sealed record Finding(string Rule, Severity Severity, string Subject, string Message, string Remedy)
{
    /// <summary>
    /// The axis it is about, <c>x</c>, <c>y</c> or <c>z</c>: that of a subject which is a feature id, unless it is set.
    /// Empty where it is about none.
    /// </summary>
    public string Axis
    {
        get => field ?? FeatureId.TryParse(Subject)?.Axis ?? "";
        init;
    }

    /// <summary>The value found, when it is one number; its unit is in <see cref="Unit"/>.</summary>
    public double? Value { get; init; }

    /// <summary>The limit the value was held against, when there is one.</summary>
    public double? Limit { get; init; }

    /// <summary>
    /// The unit of <see cref="Value"/> and <see cref="Limit"/>: mm, deg, MPa, pixels, layers or empty.
    /// </summary>
    public string Unit { get; init; } = "";

    /// <summary>The first places on a mesh that it is about, at most ten; none when it is not about places.</summary>
    public IReadOnlyList<FindingPlace> Places { get; init; } = [];

    /// <summary>
    /// As a line of text: <c>warning [wall-too-thin] nest.wall: The wall is 0.4 mm thick. Make it thicker.</c>
    /// </summary>
    public override string ToString()
    {
        string subject = Subject.Length > 0 ? $" {Subject}:" : "",
            remedy = Remedy.Length > 0 ? $" {Remedy}" : "";
        return $"{Severity.ToString().ToLowerInvariant()} [{Rule}]{subject} {Message}{remedy}";
    }
}
