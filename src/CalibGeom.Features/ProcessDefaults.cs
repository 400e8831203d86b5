namespace CalibGeom.Features;

/// <summary>
/// How a print is taken to be made where nobody says it: one set for specs, logs and the virtual printer.
/// </summary>
public static class ProcessDefaults
{
    /// <summary>Height of one layer, mm: 0.05, the usual one of resin printers (common practice, no source).</summary>
    public const double LayerHeight = 0.05;

    /// <summary>Width and depth of one pixel on the plate, mm: 0.04 (common practice, no source).</summary>
    public const double PixelPitch = 0.04;

    /// <summary>How many layers at the plate are exposed for the base time: 5 (common practice, no source).</summary>
    public const int BaseLayers = 5;

    /// <summary>Exposure of a base layer, s: 25, several times a usual exposure (common practice, no source).</summary>
    public const double BaseTime = 25;
}
