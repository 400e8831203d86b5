namespace CalibGeom.Meshes;

/// <summary>Disjoint sets of 0 to n - 1; the smallest member is the root.</summary>
internal sealed class UnionFind
{
    private readonly int[] parent;

    internal UnionFind(int count)
    {
        parent = new int[count];
        for (int i = 0; i < count; i++)
            parent[i] = i;
    }

    internal int Find(int item)
    {
        while (parent[item] != item)
        {
            parent[item] = parent[parent[item]];
            item = parent[item];
        }
        return item;
    }

    internal void Join(int a, int b)
    {
        int rootA = Find(a),
            rootB = Find(b);
        if (rootA < rootB)
            parent[rootB] = rootA;
        else
            parent[rootA] = rootB;
    }

    /// <summary>
    /// Numbers the sets 0, 1, ... in order of their smallest member; returns the number of each item's set.
    /// </summary>
    internal int[] Number(out int sets)
    {
        var number = new int[parent.Length];
        sets = 0;
        for (int i = 0; i < parent.Length; i++)
            number[i] = Find(i) == i ? sets++ : number[Find(i)];
        return number;
    }
}
