namespace CalibGeom.Verification.Readings;

/// <summary>How a box was felt to sit in the next one, from tight to loose.</summary>
public enum FeltFit
{
    /// <summary>Will not seat under a firm thumb.</summary>
    Refuses,

    /// <summary>Seats, and stays when inverted.</summary>
    Binds,

    /// <summary>Seats by its weight or a finger's, and a tap frees it.</summary>
    Slides,

    /// <summary>Falls out, or rocks visibly.</summary>
    Rattles,
}
