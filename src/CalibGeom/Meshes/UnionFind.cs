namespace CalibGeom.Meshes;

/// <summary>
/// Disjoint sets of 0, 1, ...; the smallest member is the root. Items may be added one by one. Not safe to share
/// between threads.
/// </summary>
public sealed class UnionFind
{
    private int[] parent;

    /// <summary>Items 0 to count - 1, each a set of its own.</summary>
    /// <param name="count">How many, 0 or more. Default 0.</param>
    public UnionFind(int count = 0)
    {
        parent = new int[Math.Max(count, 16)];
        for (int i = 0; i < count; i++)
            parent[i] = i;
        Count = count;
    }

    /// <summary>The number of items.</summary>
    public int Count { get; private set; }

    /// <summary>Adds an item as a set of its own and returns its number.</summary>
    public int Add()
    {
        if (Count == parent.Length)
            Array.Resize(ref parent, 2 * Count);
        parent[Count] = Count;
        return Count++;
    }

    /// <summary>The root of the set that an item is in.</summary>
    /// <param name="item">The item.</param>
    public int Find(int item)
    {
        int[] up = parent;
        while (up[item] != item)
            item = up[item] = up[up[item]];
        return item;
    }

    /// <summary>Joins the sets of two items.</summary>
    /// <param name="a">One item.</param>
    /// <param name="b">The other.</param>
    public void Join(int a, int b) => Joined(a, b);

    /// <summary>Joins two sets; returns the root that stays and the one that vanishes, or the same twice.</summary>
    internal (int Kept, int Gone) Joined(int a, int b)
    {
        (a, b) = (Find(a), Find(b));
        if (a > b)
            (a, b) = (b, a);
        parent[b] = a;
        return (a, b);
    }

    /// <summary>
    /// Numbers the sets 0, 1, ... in order of their smallest member; returns the number of each item's set.
    /// </summary>
    internal int[] Number(out int sets)
    {
        var number = new int[Count];
        sets = 0;
        for (int i = 0; i < number.Length; i++)
            number[i] = Find(i) == i ? sets++ : number[Find(i)];
        return number;
    }
}
