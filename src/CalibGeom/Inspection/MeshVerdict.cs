namespace CalibGeom.Inspection;

/// <summary>What an inspection says of a mesh as a whole.</summary>
public enum MeshVerdict
{
    /// <summary>Nothing but notes: it can be printed as it is.</summary>
    Ready,

    /// <summary>There is a warning: it may not print well.</summary>
    Doubtful,

    /// <summary>There is an error: it will not print as it is.</summary>
    Failing,
}
