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
        for (int edge = 0; edge < arrangement.Edges.Count; edge++)
        {
            (int low, int high) = arrangement.Edges[edge];
            mesh.Require(low, high);
        }
        return Flood(mesh, arrangement);
    }

    private static List<(int, int, int, Winding)> Flood(ConstrainedDelaunay mesh, Arrangement arrangement)
    {
        var windings = new Winding[mesh.Count];
        var known = new bool[mesh.Count];
        var open = new int[mesh.Count];
        int waiting = 1;
        known[open[0] = mesh.OutsideTriangle] = true;
        while (waiting > 0)
        {
            int t = open[--waiting];
            for (int side = 0; side < 3; side++)
            {
                (int neighbour, int from, int to) = mesh.Across(t, side);
                if (neighbour < 0 || known[neighbour])
                    continue;
                known[neighbour] = true;
                windings[neighbour] = windings[t] + Change(arrangement, from, to);
                open[waiting++] = neighbour;
            }
        }
        var result = new List<(int, int, int, Winding)>(mesh.Count);
        for (int t = 0; t < windings.Length; t++)
            if (windings[t] != default)
            {
                (int a, int b, int c) = mesh.Corners(t);
                result.Add((a, b, c, windings[t]));
            }
        return result;
    }

    /// <summary>The change of winding when crossing from the left of from-to to its right.</summary>
    private static Winding Change(Arrangement arrangement, int from, int to)
    {
        int edge = from < to ? arrangement.Edges.Find(from, to) : arrangement.Edges.Find(to, from);
        if (edge < 0)
            return default;
        Winding left = arrangement.WindingOf(edge);
        return from < to ? -left : left;
    }
}
