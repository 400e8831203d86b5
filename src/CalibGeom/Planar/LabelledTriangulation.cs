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
        int[] borders = mesh.Require(arrangement.Edges);
        return Flood(mesh, borders, arrangement);
    }

    private static List<(int, int, int, Winding)> Flood(
        ConstrainedDelaunay mesh,
        int[] borders,
        Arrangement arrangement
    )
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
                int border = borders[3 * t + side];
                windings[neighbour] = border < 0 ? windings[t] : windings[t] + Change(arrangement, border, from < to);
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

    /// <summary>The change of winding when crossing an edge from its left as it is seen to its right.</summary>
    private static Winding Change(Arrangement arrangement, int edge, bool rising)
    {
        Winding left = arrangement.WindingOf(edge);
        return rising ? -left : left;
    }
}
