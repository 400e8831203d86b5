namespace CalibGeom.Verification.Logs;

/// <summary>
/// What a person says of a print. What is left out is taken from the object's process, then from the last trial of the
/// log, then from the defaults. Immutable.
/// </summary>
public sealed record TrialEntry
{
    /// <summary>Exposure of a normal layer, s.</summary>
    public double? Time { get; init; }

    /// <summary>Rest before each exposure, s.</summary>
    public double? Rest { get; init; }

    /// <summary>Edge offset entered in the slicer, mm, positive = solids drawn larger.</summary>
    public double? EdgeOffset { get; init; }

    /// <summary>Scale typed in the slicer along X; 1 is none.</summary>
    public double? ScaleX { get; init; }

    /// <summary>Scale typed in the slicer along Y; 1 is none.</summary>
    public double? ScaleY { get; init; }

    /// <summary>Layer height, mm.</summary>
    public double? Layer { get; init; }

    /// <summary>Number of base layers.</summary>
    public int? BaseLayers { get; init; }

    /// <summary>Exposure of a base layer, s.</summary>
    public double? BaseTime { get; init; }

    /// <summary>What a layer takes besides exposure and rest, s.</summary>
    public double? Lift { get; init; }

    /// <summary>Vat temperature at the start, degrees C. Never taken from the last trial.</summary>
    public double? TemperatureStart { get; init; }

    /// <summary>Vat temperature at the end, degrees C. Never taken from the last trial.</summary>
    public double? TemperatureEnd { get; init; }

    /// <summary>The resin's name.</summary>
    public string? Resin { get; init; }

    /// <summary>The printer's name.</summary>
    public string? Printer { get; init; }

    /// <summary>The bottle or batch of the resin.</summary>
    public string? Bottle { get; init; }

    /// <summary>Which film is in the vat.</summary>
    public string? Film { get; init; }

    /// <summary>Which screen or light engine is in the printer.</summary>
    public string? Screen { get; init; }

    /// <summary>Whether the slicer wrote grey-level edges.</summary>
    public bool? GreyLevels { get; init; }

    /// <summary>How the object lay, 0 or 90 degrees about Z, when its axes are not the printer's.</summary>
    public int? Orientation { get; init; }

    /// <summary>How many layers the machine has printed since the trial before.</summary>
    public int? LayersSince { get; init; }

    /// <summary>How many hours the machine has printed since the trial before.</summary>
    public double? HoursSince { get; init; }

    /// <summary>The day of the print.</summary>
    public DateOnly? Date { get; init; }
}
