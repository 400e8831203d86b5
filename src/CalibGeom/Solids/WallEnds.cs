namespace CalibGeom.Solids;

/// <summary>Both ends of a loft's walls.</summary>
internal struct WallEnds
{
    internal WallEnd Bottom { get; set; }

    internal WallEnd Top { get; set; }
}
