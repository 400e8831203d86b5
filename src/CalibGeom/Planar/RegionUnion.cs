namespace CalibGeom.Planar;

/// <summary>The union of outlines on the grid, with snap rounding where edges cross.</summary>
internal static class RegionUnion
{
    internal static IReadOnlyList<Region> Of(IReadOnlyList<Outline> outlines)
    {
        if (outlines.Count == 0)
            return [];
        var arrangement = new Arrangement([.. outlines.Select(o => (o, 1))], []);
        Dictionary<int, List<int>> next = BorderEdges(arrangement);
        var outers = new List<Outline>();
        var holes = new List<Outline>();
        while (next.Count > 0)
        {
            GridPoint[] loop = WithoutStraights(TakeLoop(next, arrangement.Vertices));
            (Outline.SignedDoubledArea(loop) > 0 ? outers : holes).Add(new Outline(loop));
        }
        return Nest(outers, holes);
    }

    /// <summary>The edges between covered and uncovered, directed with the covered side on the left.</summary>
    private static Dictionary<int, List<int>> BorderEdges(Arrangement arrangement)
    {
        var next = new Dictionary<int, List<int>>();
        foreach ((int a, int b, int c, Winding winding) in LabelledTriangulation.Of(arrangement))
            if (winding.First > 0)
                foreach ((int from, int to) in (ReadOnlySpan<(int, int)>)[(a, b), (b, c), (c, a)])
                    if (next.TryGetValue(to, out List<int>? back) && back.Remove(from))
                    {
                        if (back.Count == 0)
                            next.Remove(to);
                    }
                    else if (next.TryGetValue(from, out List<int>? ends))
                        ends.Add(to);
                    else
                        next[from] = [to];
        return next;
    }

    /// <summary>
    /// Takes one loop out, turning as far left as possible so that areas that touch in a point come apart.
    /// </summary>
    private static List<GridPoint> TakeLoop(Dictionary<int, List<int>> next, IReadOnlyList<GridPoint> vertices)
    {
        int start = next.Keys.Min(),
            before = -1,
            at = start;
        var loop = new List<GridPoint>();
        do
        {
            List<int> ends = next[at];
            int to = before < 0 ? ends[0] : ends.MinBy(e => TurnAngle(vertices[before], vertices[at], vertices[e]));
            ends.Remove(to);
            if (ends.Count == 0)
                next.Remove(at);
            loop.Add(vertices[at]);
            (before, at) = (at, to);
        } while (at != start);
        return loop;
    }

    /// <summary>
    /// The angle turned right at b, from -pi (sharp left) to pi; only compared where several borders meet in a vertex.
    /// </summary>
    private static double TurnAngle(GridPoint a, GridPoint b, GridPoint c) =>
        -Math.Atan2(Predicates.Cross(a, b, c), (double)(b.X - a.X) * (c.X - b.X) + (double)(b.Y - a.Y) * (c.Y - b.Y));

    private static GridPoint[] WithoutStraights(List<GridPoint> loop)
    {
        var kept = new List<GridPoint>();
        for (int i = 0; i < loop.Count; i++)
            if (Predicates.Cross(loop[(i + loop.Count - 1) % loop.Count], loop[i], loop[(i + 1) % loop.Count]) != 0)
                kept.Add(loop[i]);
        return [.. kept];
    }

    private static List<Region> Nest(List<Outline> outers, List<Outline> holes)
    {
        ILookup<Outline, Outline> byOuter = holes.ToLookup(h =>
            outers.Where(o => o.DoubledArea > h.DoubledArea && o.Locate(h.Points[0]) >= 0).MinBy(o => o.DoubledArea)!
        );
        return outers.ConvertAll(o => new Region(o, byOuter[o]));
    }
}
