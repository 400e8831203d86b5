namespace CalibGeom.Verification.Logs;

/// <summary>A print with all its settings and conditions. Immutable.</summary>
/// <param name="Settings">What was set.</param>
/// <param name="Conditions">The conditions.</param>
/// <param name="Cycle">Base layers and times.</param>
/// <param name="Taken">What nobody said and was taken from the last trial, as words such as <c>rest 0.5 s</c>.</param>
internal sealed record FilledEntry(
    ExposureSettings Settings,
    TrialConditions Conditions,
    LayerCycle Cycle,
    IReadOnlyList<string> Taken
)
{
    /// <summary>The scale typed in the slicer.</summary>
    public SlicerScale Scale { get; init; } = SlicerScale.None;

    /// <summary>The pixel pitch along X and Y in mm, or null when nobody knows it.</summary>
    public PerAxis? Pixel { get; init; }
}
