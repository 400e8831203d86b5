namespace CalibGeom.Verification.Clearances;

/// <summary>How far a measured size lies from the fitted model. Immutable.</summary>
public sealed record FaceResidual
{
    /// <summary>The feature.</summary>
    public required FeatureId Feature { get; init; }

    /// <summary>The instrument.</summary>
    public required string Instrument { get; init; }

    /// <summary>Which of several prints, from 1.</summary>
    public required int Print { get; init; }

    /// <summary>The mean of its readings, mm, corrected to 20 degrees C where that was possible.</summary>
    public required double Mean { get; init; }

    /// <summary>How many readings.</summary>
    public required int Count { get; init; }

    /// <summary>Mean less fitted, mm; of a face that was left out, less what the others predict.</summary>
    public required double Residual { get; init; }

    /// <summary>Residual over its own standard uncertainty; 0 when the model must pass through it.</summary>
    public required double Standardised { get; init; }

    /// <summary>Whether it was left out as a gross error.</summary>
    public required bool IsAside { get; init; }
}
