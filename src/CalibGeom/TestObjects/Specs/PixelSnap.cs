namespace CalibGeom.TestObjects.Specs;

/// <summary>What is moved onto whole pixels when the pixel pitch is known.</summary>
public enum PixelSnap
{
    /// <summary>Gauge widths and column positions become whole pixels.</summary>
    Pixels,

    /// <summary>Nothing: sizes and positions stay as given.</summary>
    None,
}
