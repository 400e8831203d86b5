namespace CalibGeom.Verification.Tuning;

/// <summary>What to do next.</summary>
public enum NextKind
{
    /// <summary>Print with changed settings.</summary>
    Change,

    /// <summary>Print once more with the same settings.</summary>
    Confirm,

    /// <summary>Stop: another print would change nothing that could be seen.</summary>
    Stop,
}
