namespace CalibGeom.Inspection.Layers;

/// <summary>What may go wrong in a layer.</summary>
public enum LayerDefectKind
{
    /// <summary>Material that starts in mid-air.</summary>
    Island,

    /// <summary>A layer that sticks out, carried on one side only.</summary>
    Overhang,

    /// <summary>A layer that spans a gap, carried on both sides.</summary>
    Bridge,

    /// <summary>Resin trapped between the part, the plate and the film while printing.</summary>
    SuctionCup,

    /// <summary>Resin enclosed in the part for good.</summary>
    SealedVoid,

    /// <summary>A wall or column of too few pixels.</summary>
    ThinWall,

    /// <summary>A gap or hole of too few pixels.</summary>
    ThinGap,

    /// <summary>A part of the mesh that lies between the sections of two layers and is in neither.</summary>
    BetweenLayers,
}
