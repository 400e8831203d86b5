namespace CalibGeom.TestObjects;

/// <summary>The level axis that the whole object is turned about.</summary>
public enum TiltAxis
{
    /// <summary>About X: a positive angle lifts the back.</summary>
    X,

    /// <summary>About Y: a positive angle lifts the left side.</summary>
    Y,
}
