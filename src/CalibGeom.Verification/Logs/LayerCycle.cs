namespace CalibGeom.Verification.Logs;

/// <summary>What a print's time consists of besides exposure and rest of normal layers. Immutable.</summary>
public sealed record LayerCycle
{
    /// <summary>A cycle.</summary>
    /// <param name="baseLayers">Number of base layers, 0 to 1000. Default 5.</param>
    /// <param name="baseTime">Exposure of a base layer in s, 0 to 1000. Default 25.</param>
    /// <param name="lift">Lift, return and all else a layer takes besides exposure and rest, in s, 0 to 600. Default
    /// 7.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public LayerCycle(
        int baseLayers = ProcessDefaults.BaseLayers,
        double baseTime = ProcessDefaults.BaseTime,
        double lift = 7
    )
    {
        BaseLayers = (int)Require.Within(baseLayers, 0, 1000, "number of base layers", "layers", nameof(baseLayers));
        BaseTime = Require.Within(baseTime, 0, 1000, "base exposure", "s", nameof(baseTime));
        Lift = Require.Within(lift, 0, 600, "lift overhead", "s", nameof(lift));
    }

    /// <summary>Number of base layers.</summary>
    public int BaseLayers { get; }

    /// <summary>Exposure of a base layer in s.</summary>
    public double BaseTime { get; }

    /// <summary>What a layer takes besides exposure and rest, in s.</summary>
    public double Lift { get; }

    /// <summary>
    /// How many layers a part of some height has: those whose middle lies within it, as slicing does, one at least.
    /// </summary>
    /// <param name="height">Height of the part in mm, above 0, at most a million layers.</param>
    /// <param name="layer">Layer height in mm, above 0.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static int Layers(double height, double layer)
    {
        Require.Positive(layer, 1000, "layer height", "mm", nameof(layer));
        Require.Within(height / layer, 0, 1_000_000, "height", "layers", nameof(height));
        return Math.Max(1, (int)Math.Ceiling(height / layer - 0.5 - 1e-9));
    }

    /// <summary>
    /// The time in s a part of some height takes: base layers, then normal layers with exposure, rest and lift.
    /// </summary>
    /// <param name="settings">Exposure and rest.</param>
    /// <param name="layer">Layer height in mm, above 0.</param>
    /// <param name="height">Height of the part in mm, above 0.</param>
    public double PrintTime(ExposureSettings settings, double layer, double height)
    {
        ArgumentNullException.ThrowIfNull(settings);
        int layers = Layers(height, layer),
            bases = Math.Min(BaseLayers, layers);
        return bases * (BaseTime + settings.Rest + Lift) + (layers - bases) * (settings.Time + settings.Rest + Lift);
    }
}
