using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Joins defects of one kind that go on from layer to layer at nearly the same place, keeping the worst.
/// </summary>
internal sealed class DefectTrail(LayerDefectKind kind)
{
    private const double SamePlace = 1.5;
    private readonly List<LayerDefect> active = [];
    private readonly List<LayerDefect> finished = [];

    internal void Add(int layer, Vector3D place, double size)
    {
        Retire(layer - 2);
        int known = active.FindIndex(d =>
            Math.Abs(d.Place.X - place.X) <= SamePlace && Math.Abs(d.Place.Y - place.Y) <= SamePlace
        );
        if (known < 0)
            active.Add(new LayerDefect(kind, place, layer, layer, size));
        else if (size > active[known].Size)
            active[known] = active[known] with { Place = place, LastLayer = layer, Size = size };
        else
            active[known] = active[known] with { LastLayer = layer };
    }

    internal IEnumerable<LayerDefect> All() => finished.Concat(active);

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
