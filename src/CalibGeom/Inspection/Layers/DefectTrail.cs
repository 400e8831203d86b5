using System.Runtime.InteropServices;
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
    private readonly List<Trail> active = [];
    private readonly List<LayerDefect> finished = [];
    private int retired = int.MinValue;

    internal void Add(LayerDefect defect)
    {
        Retire(defect.Layer - 2);
        int known = Nearest(defect);
        if (known < 0)
            active.Add(new Trail(defect));
        else if (defect.Size > active[known].Worst.Size)
            active[known] = new Trail(defect with { Layer = active[known].Worst.Layer });
        else
            active[known] = new Trail(active[known].Worst with { LastLayer = defect.Layer });
    }

    /// <summary>Takes back everything that a place of a layer goes on from.</summary>
    internal IReadOnlyList<LayerDefect> Take(Vector3D place, int layer)
    {
        Retire(layer - 2);
        var taken = new List<LayerDefect>();
        for (int i = active.Count - 1; i >= 0; i--)
            if (active[i].Last < layer && active[i].DistanceFrom(place) <= active[i].Reach)
            {
                taken.Add(active[i].Worst);
                active.RemoveAt(i);
            }
        return taken;
    }

    internal IEnumerable<LayerDefect> All() => finished.Concat(active.Select(t => t.Worst));

    private int Nearest(LayerDefect defect)
    {
        (int Index, double Distance) best = (-1, double.PositiveInfinity);
        Span<Trail> trails = CollectionsMarshal.AsSpan(active);
        for (int i = 0; i < trails.Length; i++)
        {
            ref readonly Trail trail = ref trails[i];
            if (trail.Last >= defect.Layer)
                continue;
            double distance = trail.DistanceFrom(defect.Place);
            if (distance <= trail.Reach && distance < best.Distance)
                best = (i, distance);
        }
        return best.Index;
    }

    private void Retire(int layer)
    {
        if (layer <= retired)
            return;
        retired = layer;
        finished.AddRange(active.Where(t => t.Last < layer).Select(t => t.Worst));
        active.RemoveAll(t => t.Last < layer);
    }

    /// <summary>What a search looks at, beside the worst of a trail.</summary>
    private readonly struct Trail(LayerDefect worst)
    {
        private readonly double x = worst.Place.X;
        private readonly double y = worst.Place.Y;

        internal LayerDefect Worst { get; } = worst;

        internal int Last { get; } = worst.LastLayer;

        internal double Reach { get; } = Math.Max(SamePlace, worst.Size);

        internal double DistanceFrom(Vector3D place) => Math.Max(Math.Abs(x - place.X), Math.Abs(y - place.Y));
    }
}
