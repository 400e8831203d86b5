namespace CalibGeom.Verification.Decisions;

/// <summary>What ISO 14253-1 lets one say.</summary>
public enum Verdict
{
    /// <summary>Within the limits, less the guard band on each side.</summary>
    Conforms,

    /// <summary>Outside the limits by more than the guard band.</summary>
    DoesNotConform,

    /// <summary>Neither can be shown with this uncertainty.</summary>
    CannotBeTold,
}
