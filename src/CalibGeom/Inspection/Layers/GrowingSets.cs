namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Disjoint sets whose members are added one by one, numbered 0, 1, ...; the smallest member is the root.
/// </summary>
internal sealed class GrowingSets
{
    private readonly List<int> parent = [];

    internal int Add()
    {
        parent.Add(parent.Count);
        return parent.Count - 1;
    }

    internal int Find(int item)
    {
        while (parent[item] != item)
            item = parent[item] = parent[parent[item]];
        return item;
    }

    /// <summary>Joins two sets; returns the root that stays and the one that vanishes, or the same twice.</summary>
    internal (int Kept, int Gone) Join(int a, int b)
    {
        (a, b) = (Find(a), Find(b));
        if (a > b)
            (a, b) = (b, a);
        parent[b] = a;
        return (a, b);
    }
}
