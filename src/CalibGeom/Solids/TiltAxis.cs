namespace CalibGeom.Solids;

/// <summary>The level axis that a solid is tilted about, by the right-hand rule.</summary>
public enum TiltAxis
{
    /// <summary>About X: a positive angle lifts the back.</summary>
    X,

    /// <summary>About Y: a positive angle lifts the left side.</summary>
    Y,
}
