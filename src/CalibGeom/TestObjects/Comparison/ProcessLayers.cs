using CalibGeom.Inspection.Layers;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>What a spec's process means for the inspection of layers.</summary>
public static class ProcessLayers
{
    /// <summary>The usual limits with the layers and pixels of a process.</summary>
    /// <param name="process">The process; null for the defaults.</param>
    public static LayerSettings Of(ProcessSpec? process) =>
        process is null
            ? new LayerSettings()
            : new LayerSettings
            {
                LayerHeight = process.LayerHeight,
                PixelX = process.PixelPitch.X,
                PixelY = process.PixelPitch.Y,
            };
}
