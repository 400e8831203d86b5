using System.Text.Json.Nodes;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Make;

/// <summary>
/// How many layers an object is and about how long it prints. The spec's process says layers and base exposure; what a
/// normal layer takes is not known when an object is made, so that it is assumed and said.
/// </summary>
internal sealed record PrintEstimate(int Layers, double LayerHeight, double Seconds)
{
    /// <summary>Exposure of a normal layer, s: assumed, common practice, no source.</summary>
    private const double Exposure = 2.5;

    /// <summary>The estimate; null when the spec has no process.</summary>
    internal static PrintEstimate? Of(ProcessSpec? process, double height)
    {
        if (process is null)
            return null;
        var cycle = new LayerCycle(process.BaseLayers, process.BaseTime);
        return new(
            LayerCycle.Layers(height, process.LayerHeight),
            process.LayerHeight,
            cycle.PrintTime(new ExposureSettings(Exposure, 0, 0), process.LayerHeight, height)
        );
    }

    /// <summary>One line for a person.</summary>
    internal string Text =>
        FormattableString.Invariant(
            $"layers {Layers} of {LayerHeight} mm  about {Seconds / 60:0} minutes if a layer takes {Exposure} s of light and {new LayerCycle().Lift} s besides"
        );

    internal JsonObject ToJson() =>
        new()
        {
            ["layers"] = Layers,
            ["minutes"] = Math.Round(Seconds / 60, 1),
            ["assumedExposure"] = Exposure,
            ["assumedLift"] = new LayerCycle().Lift,
        };
}
