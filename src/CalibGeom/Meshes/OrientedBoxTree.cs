using CalibGeom.Planar;

namespace CalibGeom.Meshes;

/// <summary>
/// Triangles in a tree of <see cref="OrientedBox"/>es: finds the pairs that may meet also where the boxes along the
/// axes say nothing, as round long thin triangles that lie aslant.
/// </summary>
internal sealed class OrientedBoxTree
{
    private const int LeafSize = 4;

    // Subtrees in the work of all cores together.
    private const int Parts = 16;

    private readonly TriangleMesh mesh;
    private readonly int[] order;
    private readonly OrientedBox[] nodes;
    private readonly OrientedBox[] own;
    private readonly int leaves;

    /// <param name="mesh">The mesh.</param>
    /// <param name="triangles">At least one triangle of it.</param>
    internal OrientedBoxTree(TriangleMesh mesh, int[] triangles)
    {
        this.mesh = mesh;
        order = [.. triangles];
        leaves = 1;
        while (leaves * LeafSize < order.Length)
            leaves *= 2;
        nodes = new OrientedBox[2 * leaves];
        Build(Root);
        own = Array.ConvertAll(order, t => OrientedBox.Around(mesh, [t]));
    }

    private Node Root => new(1, 0, order.Length);

    /// <summary>
    /// The pairs of triangles that may meet in parts, each of which may be gone through on another core.
    /// </summary>
    internal IEnumerable<Action<Func<int, int, bool>>> PairsInParts() => Split(Root);

    /// <summary>
    /// Calls for each pair of a triangle here and one of another tree that may meet, until the call returns false.
    /// </summary>
    internal bool Pairs(OrientedBoxTree other, Func<int, int, bool> pair) => Across(Root, other, other.Root, pair);

    /// <summary>Calls for each triangle here that may meet one of a tree of boxes along the axes.</summary>
    /// <param name="boxes">The tree.</param>
    /// <param name="numbers">The triangle of each of its boxes.</param>
    /// <param name="pair">Takes the numbers of two triangles.</param>
    internal void Pairs(BoxTree boxes, int[] numbers, Func<int, int, bool> pair)
    {
        bool goesOn = true;
        for (int i = 0; i < order.Length && goesOn; i++)
        {
            OrientedBox box = own[i];
            int triangle = order[i];
            boxes.Meeting(
                (low, high) => goesOn && box.Meets(OrientedBox.Between(low, high)),
                found => goesOn = goesOn && pair(triangle, numbers[found])
            );
        }
    }

    private void Build(Node node)
    {
        nodes[node.Number] = OrientedBox.Around(mesh, order.AsSpan(node.From, node.To - node.From));
        if (node.Number >= leaves)
            return;
        Sort(node.From, node.To);
        Build(node.First);
        Build(node.Second);
    }

    /// <summary>Sorts by the middles of the longest edges, along the axis on which these lie widest.</summary>
    private void Sort(int from, int to)
    {
        Vector3D[] middles = Array.ConvertAll(order[from..to], MiddleOf);
        (Vector3D min, Vector3D max) = (middles[0], middles[0]);
        foreach (Vector3D m in middles)
            (min, max) = (Vector3D.Least(min, m), Vector3D.Most(max, m));
        Vector3D size = max - min;
        double[] keys =
            size.X >= size.Y && size.X >= size.Z ? Array.ConvertAll(middles, m => m.X)
            : size.Y >= size.Z ? Array.ConvertAll(middles, m => m.Y)
            : Array.ConvertAll(middles, m => m.Z);
        keys.AsSpan().Sort(order.AsSpan(from, to - from));
    }

    private Vector3D MiddleOf(int triangle)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
        (double ab, double bc, double ca) = ((b - a).Length, (c - b).Length, (a - c).Length);
        return (
                ab >= bc && ab >= ca ? a + b
                : bc >= ca ? b + c
                : c + a
            ) * 0.5;
    }

    private IEnumerable<Action<Func<int, int, bool>>> Split(Node node)
    {
        if (node.Number >= Math.Min(Parts, leaves))
            return [pair => Within(node, pair)];
        return [.. Split(node.First), .. Split(node.Second), pair => Across(node.First, this, node.Second, pair)];
    }

    private bool Within(Node node, Func<int, int, bool> pair)
    {
        if (node.Number < leaves)
            return Within(node.First, pair) && Within(node.Second, pair) && Across(node.First, this, node.Second, pair);
        for (int i = node.From; i < node.To; i++)
        for (int j = i + 1; j < node.To; j++)
            if (own[i].Meets(own[j]) && !pair(order[i], order[j]))
                return false;
        return true;
    }

    private bool Across(Node a, OrientedBoxTree other, Node b, Func<int, int, bool> pair)
    {
        if (!nodes[a.Number].Meets(other.nodes[b.Number]))
            return true;
        bool leafA = a.Number >= leaves,
            leafB = b.Number >= other.leaves;
        if (!leafA && (leafB || nodes[a.Number].Reach >= other.nodes[b.Number].Reach))
            return Across(a.First, other, b, pair) && Across(a.Second, other, b, pair);
        if (!leafB)
            return Across(a, other, b.First, pair) && Across(a, other, b.Second, pair);
        for (int i = a.From; i < a.To; i++)
        for (int j = b.From; j < b.To; j++)
            if (own[i].Meets(other.own[j]) && !pair(order[i], other.order[j]))
                return false;
        return true;
    }

    /// <summary>The triangles below a place of the tree; it is halved like this everywhere.</summary>
    private readonly record struct Node(int Number, int From, int To)
    {
        internal int Middle => From + (To - From + 1) / 2;

        internal Node First => new(2 * Number, From, Middle);

        internal Node Second => new(2 * Number + 1, Middle, To);
    }
}
