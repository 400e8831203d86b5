namespace CalibGeom.Verification.Tuning;

/// <summary>What to do next.</summary>
public enum NextKind
{
    /// <summary>Print with changed settings.</summary>
    Change,

    /// <summary>Print once more with the same settings, to confirm.</summary>
    Confirm,

    /// <summary>On target and confirmed: stop.</summary>
    Stop,

    /// <summary>Not surely on target, but no change of settings that the caliper could see would help.</summary>
    NothingVisible,
}
