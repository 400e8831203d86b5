namespace CalibGeom.TestObjects.Parts;

/// <summary>A side of the plinth.</summary>
internal enum Side
{
    /// <summary>Towards +Y.</summary>
    Back,

    /// <summary>Towards -Y.</summary>
    Front,

    /// <summary>Towards -X.</summary>
    Left,

    /// <summary>Towards +X.</summary>
    Right,
}
