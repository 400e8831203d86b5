namespace CalibGeom.Verification.Clearances;

/// <summary>
/// What to enter in a slicer for one axis so that parts come out at their nominal sizes. It is instead of an edge
/// offset advised elsewhere, never on top of it. Immutable.
/// </summary>
public sealed record CompensationAxis
{
    /// <summary><c>x</c> or <c>y</c>.</summary>
    public required string Axis { get; init; }

    /// <summary> Scale the model by this: 1 / (1 + s); exactly 1 when the scale is not distinct from zero. </summary>
    public required Estimate ScaleFactor { get; init; }

    /// <summary>
    /// Then move every edge outward by this, mm (negative: inward): -g / (1 + s); exactly 0 when growth is not distinct
    /// from zero.
    /// </summary>
    public required Estimate EdgeOffset { get; init; }

    /// <summary>Whether the scale is distinct from zero (5 %); when not, none is compensated.</summary>
    public required bool ScaleDistinct { get; init; }

    /// <summary>Whether the growth, at the scale that is compensated, is distinct from zero (5 %).</summary>
    public required bool OffsetDistinct { get; init; }

    /// <summary>The offset in pixels, or null without a pixel pitch.</summary>
    public required double? EdgeOffsetPixels { get; init; }
}
