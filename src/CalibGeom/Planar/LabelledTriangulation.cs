namespace CalibGeom.Planar;

/// <summary>
/// The triangles of an arrangement with the winding numbers of both sets; triangles outside both are left out.
/// </summary>
internal static class LabelledTriangulation
{
    /// <summary>Triangles as indices into the arrangement's vertices, counter-clockwise, with their windings.</summary>
    internal static List<(int A, int B, int C, Winding Winding)> Of(Arrangement arrangement)
    {
        var mesh = new ConstrainedDelaunay(arrangement.Vertices);
        foreach ((int low, int high) in arrangement.Edges.Keys)
            mesh.Require(low, high);
        return Flood(mesh, arrangement);
    }

    private static List<(int, int, int, Winding)> Flood(ConstrainedDelaunay mesh, Arrangement arrangement)
    {
        var windings = new Winding?[mesh.Count];
        var open = new Stack<int>();
        int start = mesh.OutsideTriangle;
        windings[start] = default(Winding);
        open.Push(start);
        while (open.TryPop(out int t))
            for (int side = 0; side < 3; side++)
            {
                (int neighbour, int from, int to) = mesh.Across(t, side);
                if (neighbour < 0 || windings[neighbour] is not null)
                    continue;
                windings[neighbour] = windings[t]!.Value + Change(arrangement, from, to);
                open.Push(neighbour);
            }
        var result = new List<(int, int, int, Winding)>();
        for (int t = 0; t < mesh.Count; t++)
            if (windings[t] is { } w && w != default)
            {
                (int a, int b, int c) = mesh.Corners(t);
                result.Add((a, b, c, w));
            }
        return result;
    }

    /// <summary>The change of winding when crossing from the left of from-to to its right.</summary>
    private static Winding Change(Arrangement arrangement, int from, int to)
    {
        if (!arrangement.Edges.TryGetValue(from < to ? (from, to) : (to, from), out Winding left))
            return default;
        return from < to ? -left : left;
    }
}
