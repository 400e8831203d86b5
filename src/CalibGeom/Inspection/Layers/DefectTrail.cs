using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Joins defects of one kind that go on from layer to layer at nearly the same place, keeping the worst. Two of one
/// layer are never one.
/// </summary>
internal sealed class DefectTrail
{
    // mm; a large one may go on as far away as it is long.
    private const double SamePlace = 1.5;
    private readonly List<LayerDefect> active = [];
    private readonly List<LayerDefect> finished = [];

    internal void Add(LayerDefect defect)
    {
        Retire(defect.Layer - 2);
        int known = Nearest(defect);
        if (known < 0)
            active.Add(defect);
        else if (defect.Size > active[known].Size)
            active[known] = defect with { Layer = active[known].Layer };
        else
            active[known] = active[known] with { LastLayer = defect.Layer };
    }

    /// <summary>Takes back what a place of a layer goes on from; null when there is nothing.</summary>
    internal LayerDefect? Take(Vector3D place, int layer)
    {
        Retire(layer - 2);
        int known = Nearest(new LayerDefect(default, place, layer, layer, 0));
        if (known < 0)
            return null;
        LayerDefect taken = active[known];
        active.RemoveAt(known);
        return taken;
    }

    internal IEnumerable<LayerDefect> All() => finished.Concat(active);

    private int Nearest(LayerDefect defect)
    {
        (int Index, double Distance) best = (-1, double.PositiveInfinity);
        for (int i = 0; i < active.Count; i++)
        {
            Vector3D offset = active[i].Place - defect.Place;
            double distance = Math.Max(Math.Abs(offset.X), Math.Abs(offset.Y));
            if (
                active[i].LastLayer < defect.Layer
                && distance <= Math.Max(SamePlace, active[i].Size)
                && distance < best.Distance
            )
                best = (i, distance);
        }
        return best.Index;
    }

    private void Retire(int layer)
    {
        for (int i = active.Count - 1; i >= 0; i--)
            if (active[i].LastLayer < layer)
            {
                finished.Add(active[i]);
                active.RemoveAt(i);
            }
    }
}
