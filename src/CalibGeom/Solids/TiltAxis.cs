namespace CalibGeom.Solids;

/// <summary>The axis that a solid is tilted about, by the right-hand rule.</summary>
public enum TiltAxis
{
    /// <summary>About +X: the back rises.</summary>
    X,

    /// <summary>About +Y: the right side sinks.</summary>
    Y,
}
