namespace CalibGeom.Cli.Shared;

/// <summary>What a file that a command reads is.</summary>
internal enum InputKind
{
    /// <summary>Readings of a print.</summary>
    Readings,

    /// <summary>A log.</summary>
    Log,

    /// <summary>A mesh.</summary>
    Mesh,

    /// <summary>A feature table.</summary>
    Features,

    /// <summary>An object file.</summary>
    Object,

    /// <summary>A caliper record.</summary>
    Caliper,

    /// <summary>Anything else.</summary>
    Unknown,
}
