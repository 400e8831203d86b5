using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// What the layers of a mesh look like and what was found in them. Immutable and safe to share between threads.
/// </summary>
public sealed class LayerReport
{
    internal LayerReport(
        LayerSettings settings,
        Box3D bounds,
        IReadOnlyList<LayerSummary> layers,
        IReadOnlyList<LayerDefect> defects
    )
    {
        Bounds = bounds;
        Settings = settings;
        Layers = layers;
        Defects = defects;
        foreach (LayerSummary layer in layers)
        {
            if (Largest is null || layer.Area > Largest.Area + 1e-9)
                Largest = layer;
            double step = layer.Area - (layer.Index > 0 ? layers[layer.Index - 1].Area : 0);
            // The first layer stands on the plate: its area is no step. Less than a billionth is rounding.
            if (layer.Index > 0 && step > LargestStep + 1e-9)
                (LargestStep, LargestStepLayer) = (step, layer.Index);
            MeanArea += layer.Area / layers.Count;
        }
    }

    /// <summary>The process and limits.</summary>
    public LayerSettings Settings { get; }

    /// <summary>The box round the mesh; zero when it is empty.</summary>
    public Box3D Bounds { get; }

    /// <summary>All layers, from the plate upward.</summary>
    public IReadOnlyList<LayerSummary> Layers { get; }

    /// <summary>
    /// The layer that prints a height, the upper one where two meet; the nearest for heights beyond the first and last.
    /// Null when there are no layers.
    /// </summary>
    /// <param name="z">mm, in the coordinates of the mesh.</param>
    public int? LayerAt(double z) =>
        Layers.Count == 0
            ? null
            : (int)Math.Clamp(Math.Floor((z - Layers[0].Z) / Settings.LayerHeight + 0.5 + 1e-9), 0, Layers.Count - 1);

    /// <summary>What the layers hold together, mm3: room that bodies share counts once.</summary>
    public double Volume => Layers.Sum(l => l.Area) * Settings.LayerHeight;

    /// <summary>What was found, in no order of importance.</summary>
    public IReadOnlyList<LayerDefect> Defects { get; }

    /// <summary>What was found, in words, errors first; more than ten of a kind are counted together.</summary>
    /// <param name="nameOf">Gives the feature id that belongs to a place (mm), or an empty text; may be left
    /// out.</param>
    public IReadOnlyList<Finding> ToFindings(Func<Vector3D, string>? nameOf = null) => LayerFindings.Of(this, nameOf);

    /// <summary>The first of the layers with the largest area, or null when there are no layers.</summary>
    public LayerSummary? Largest { get; }

    /// <summary>The mean area of all layers, mm2.</summary>
    public double MeanArea { get; }

    /// <summary>The largest growth in area from one layer to the next, mm2; 0 when the area never grows.</summary>
    public double LargestStep { get; }

    /// <summary>The layer after <see cref="LargestStep"/>; 0 when the area never grows.</summary>
    public int LargestStepLayer { get; }

    /// <summary>
    /// The peel force of the largest layer over that of the mean layer, taking the force as proportional to the layer's
    /// area.
    /// </summary>
    public double RelativePeelForce => MeanArea > 0 ? Largest!.Area / MeanArea : 0;
}
