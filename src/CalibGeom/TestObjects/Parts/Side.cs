namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// A side of the plinth; its number is by how many quarters a part at the back is turned to stand there.
/// </summary>
internal enum Side
{
    /// <summary>Towards +Y.</summary>
    Back = 0,

    /// <summary>Towards -X.</summary>
    Left = 1,

    /// <summary>Towards -Y.</summary>
    Front = 2,

    /// <summary>Towards +X.</summary>
    Right = 3,
}
