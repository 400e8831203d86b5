using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Calipers;

/// <summary>One reading of a gauge, or of a part in a repeatability study. Immutable.</summary>
public sealed record CaliperReading
{
    /// <summary>The day it was read.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The jaws.</summary>
    public required Jaw Jaw { get; init; }

    /// <summary>Size of the gauge, mm; null for a part of a study.</summary>
    public double? Gauge { get; init; }

    /// <summary>What the display showed, mm.</summary>
    public required double Value { get; init; }

    /// <summary>The part of a study; empty for a gauge.</summary>
    public string Part { get; init; } = "";

    /// <summary>Who read it; may be empty.</summary>
    public string Person { get; init; } = "";
}
