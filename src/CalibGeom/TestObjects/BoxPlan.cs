namespace CalibGeom.TestObjects;

/// <summary>One box of a test object as it is made; heights count from the plate, before any tilt. Immutable.</summary>
/// <param name="Number">1 is the innermost.</param>
/// <param name="WantedOutside">The outside width that the spec asks for, mm.</param>
/// <param name="Outside">The outside widths made, mm.</param>
/// <param name="Inside">The inside widths made, mm; those that a pocket would have when there is none.</param>
/// <param name="Attached">Whether the box stays on the plinth; the others break away.</param>
public sealed record BoxPlan(int Number, double WantedOutside, PerAxis Outside, PerAxis Inside, bool Attached)
{
    /// <summary>Whether it has a pocket; an innermost box too small for a caliper's inside jaws is solid.</summary>
    public bool HasPocket { get; init; } = true;

    /// <summary>The box's axis, mm from the plinth's centre.</summary>
    public required double X { get; init; }

    /// <summary>The box's axis, mm from the plinth's centre.</summary>
    public required double Y { get; init; }

    /// <summary>Lower end of the gauge band, mm.</summary>
    public required double BandBottom { get; init; }

    /// <summary>Upper end of the gauge band, mm.</summary>
    public required double BandTop { get; init; }

    /// <summary>Floor of the pocket, mm.</summary>
    public required double PocketFloor { get; init; }

    /// <summary>Top of the box, mm.</summary>
    public required double Rim { get; init; }

    /// <summary>From the plinth to the top of the box, mm.</summary>
    public required double Height { get; init; }
}
