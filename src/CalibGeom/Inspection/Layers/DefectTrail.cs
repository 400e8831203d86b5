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

    /// <summary>Takes back everything that a place of a layer goes on from.</summary>
    internal IReadOnlyList<LayerDefect> Take(Vector3D place, int layer)
    {
        Retire(layer - 2);
        var taken = new List<LayerDefect>();
        for (int i = active.Count - 1; i >= 0; i--)
            if (active[i].LastLayer < layer && DistanceFrom(active[i], place) <= Reach(active[i]))
            {
                taken.Add(active[i]);
                active.RemoveAt(i);
            }
        return taken;
    }

    internal IEnumerable<LayerDefect> All() => finished.Concat(active);

    private int Nearest(LayerDefect defect)
    {
        (int Index, double Distance) best = (-1, double.PositiveInfinity);
        for (int i = 0; i < active.Count; i++)
        {
            double distance = DistanceFrom(active[i], defect.Place);
            if (active[i].LastLayer < defect.Layer && distance <= Reach(active[i]) && distance < best.Distance)
                best = (i, distance);
        }
        return best.Index;
    }

    private static double Reach(LayerDefect known) => Math.Max(SamePlace, known.Size);

    private static double DistanceFrom(LayerDefect known, Vector3D place) =>
        Math.Max(Math.Abs(known.Place.X - place.X), Math.Abs(known.Place.Y - place.Y));

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
