namespace CalibGeom.Verification.Clearances;

/// <summary>What a fit takes for granted: chosen before, or raised because the readings do not fit.</summary>
internal sealed record FitSettings(double Form, PrintVariation Variation)
{
    /// <summary>Axes whose scale gets prior knowledge.</summary>
    internal IReadOnlyList<string> Assumed { get; init; } = [];

    /// <summary>Groups that are left out as gross errors.</summary>
    internal IReadOnlyList<ReadingGroup> Aside { get; init; } = [];

    /// <summary>Degrees of freedom of the form error: those of the residuals when it was raised.</summary>
    internal double FormFreedom { get; init; } = double.PositiveInfinity;
}
