namespace CalibGeom.Verification.Maps;

/// <summary>How something may vary over the plate; each shape holds the one before it.</summary>
public enum SurfaceShape
{
    /// <summary>The same everywhere.</summary>
    Even,

    /// <summary>A plane: more on one side than on the other.</summary>
    Plane,

    /// <summary>A plane and a round bowl or dome whose middle may lie anywhere.</summary>
    Bowl,
}
