namespace CalibGeom.Features;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing has to change.</summary>
    Note,

    /// <summary>Likely to spoil a result or a print.</summary>
    Warning,

    /// <summary>Cannot work as it stands.</summary>
    Error,
}
