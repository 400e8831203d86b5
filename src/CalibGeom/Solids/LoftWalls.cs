using System.Runtime.Intrinsics;
using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>
/// The outside of a loft as wall triangles and as sections at a level, for exact decisions about contact.
/// </summary>
internal sealed class LoftWalls
{
    private readonly Loft loft;
    private readonly Lazy<BoxTree> tree;

    internal LoftWalls(Loft loft)
    {
        this.loft = loft;
        Triangles = TrianglesOf(loft);
        (Box, tree) = (Around(Triangles), new Lazy<BoxTree>(() => new BoxTree(Array.ConvertAll(Triangles, BoxOf))));
    }

    internal GridTriangle[] Triangles { get; }

    /// <summary>The box round all walls; grid values are exact in 32-bit floats.</summary>
    internal (Vector128<float> Low, Vector128<float> High) Box { get; }

    /// <summary>The bounds of the triangles.</summary>
    internal BoxTree Tree => tree.Value;

    internal int BottomLevel => loft.BottomLevel;

    internal int TopLevel => loft.TopLevel;

    /// <summary>
    /// Whether every ring's top is its bottom moved by one vector, so that no wall can cross another.
    /// </summary>
    internal bool IsTranslation
    {
        get
        {
            GridPoint b = loft.Bottom.Outer.Points[0],
                t = loft.Top.Outer.Points[0];
            return loft.Bottom.Rings.Zip(loft.Top.Rings).All(r => IsMoved(r.First, r.Second, t.X - b.X, t.Y - b.Y));
        }
    }

    /// <summary>
    /// Whether an upright or leaning axis sees every wall from inside, so that no wall can cross another: each section
    /// is star-shaped about it. Section edges keep the direction of a bottom or top edge, and on which side of one the
    /// axis lies changes evenly with height, so that both ends decide.
    /// </summary>
    internal bool IsStar
    {
        get
        {
            if (loft.Bottom.Holes.Count > 0)
                return false;
            ReadOnlySpan<GridPoint> bottom = loft.Bottom.Outer.Points,
                top = loft.Top.Outer.Points;
            GridPoint low = MiddleOf(bottom),
                high = MiddleOf(top);
            for (int i = 0, j = bottom.Length - 1; i < bottom.Length; j = i++)
                if (
                    !IsLeft(bottom[j], bottom[i], bottom[j], low)
                    || !IsLeft(bottom[j], bottom[i], top[i], high)
                    || !IsLeft(top[j], top[i], bottom[j], low)
                    || !IsLeft(top[j], top[i], top[j], high)
                )
                    return false;
            return true;
        }
    }

    /// <summary>The first corner of the outer ring at a level within the loft, times <see cref="Scale"/>.</summary>
    internal (long X, long Y) Corner(int level) => Section(loft.Bottom.Outer, loft.Top.Outer, 0, level);

    /// <summary>
    /// By what the coordinates of a section at a level are multiplied to be whole: 1 at the ends, else the height.
    /// </summary>
    internal long Scale(int level) => level == BottomLevel || level == TopLevel ? 1 : (long)TopLevel - BottomLevel;

    /// <summary>
    /// Whether a point, given times a factor, lies inside the section at a level; it must not lie on its border.
    /// </summary>
    internal bool Covers((long X, long Y) point, long factor, int level)
    {
        long scale = Scale(level);
        bool inside = false;
        foreach ((Outline bottom, Outline top) in loft.Bottom.Rings.Zip(loft.Top.Rings))
            for (int i = 0, j = bottom.Count - 1; i < bottom.Count; j = i++)
            {
                (long X, long Y) a = Section(bottom, top, j, level),
                    b = Section(bottom, top, i, level);
                if (RunsLeftOf(a, b, factor, point, scale))
                    inside = !inside;
            }
        return inside;
    }

    /// <summary>Whether a point lies strictly left of a line through a place in the direction of an edge.</summary>
    private static bool IsLeft(GridPoint from, GridPoint to, GridPoint place, GridPoint point) =>
        (long)(to.X - from.X) * (point.Y - place.Y) - (long)(to.Y - from.Y) * (point.X - place.X) > 0;

    private static GridPoint MiddleOf(ReadOnlySpan<GridPoint> ring)
    {
        GridPoint least = ring[0],
            most = ring[0];
        foreach (GridPoint p in ring)
        {
            least = new(Math.Min(least.X, p.X), Math.Min(least.Y, p.Y));
            most = new(Math.Max(most.X, p.X), Math.Max(most.Y, p.Y));
        }
        return new((least.X + most.X) / 2, (least.Y + most.Y) / 2);
    }

    /// <summary>
    /// Whether a ray from the point to the right crosses the edge a-b; edge and point are brought to one scale.
    /// </summary>
    private static bool RunsLeftOf(
        (long X, long Y) a,
        (long X, long Y) b,
        long factor,
        (long X, long Y) point,
        long scale
    )
    {
        Int128 px = (Int128)point.X * scale,
            py = (Int128)point.Y * scale;
        Int128 ax = (Int128)a.X * factor,
            ay = (Int128)a.Y * factor,
            bx = (Int128)b.X * factor,
            by = (Int128)b.Y * factor;
        if (ay > py == by > py)
            return false;
        Int128 cross = (bx - ax) * (py - ay) - (by - ay) * (px - ax);
        return by > ay ? cross > 0 : cross < 0;
    }

    private (long X, long Y) Section(Outline bottom, Outline top, int index, int level)
    {
        GridPoint b = bottom.Points[index],
            t = top.Points[index];
        if (level == BottomLevel)
            return (b.X, b.Y);
        if (level == TopLevel)
            return (t.X, t.Y);
        long up = (long)level - BottomLevel,
            down = (long)TopLevel - level;
        return (b.X * down + t.X * up, b.Y * down + t.Y * up);
    }

    private static GridTriangle[] TrianglesOf(Loft loft)
    {
        Outline[] bottoms = [.. loft.Bottom.Rings],
            tops = [.. loft.Top.Rings];
        var triangles = new GridTriangle[2 * bottoms.Sum(r => r.Count)];
        int filled = 0;
        for (int ring = 0; ring < bottoms.Length; ring++)
        {
            ReadOnlySpan<GridPoint> bottom = bottoms[ring].Points,
                top = tops[ring].Points;
            for (int i = 0, j = bottom.Length - 1; i < bottom.Length; j = i++)
            {
                GridPoint3D a = Low(loft, bottom[j]),
                    c = new(top[i], loft.TopLevel);
                triangles[filled++] = new GridTriangle(a, Low(loft, bottom[i]), c);
                triangles[filled++] = new GridTriangle(a, c, new(top[j], loft.TopLevel));
            }
        }
        return triangles;
    }

    private static GridPoint3D Low(Loft loft, GridPoint p) => new(p, loft.Underside?.LevelAt(p) ?? loft.BottomLevel);

    private static bool IsMoved(Outline bottom, Outline top, int dx, int dy)
    {
        for (int i = 0; i < bottom.Count; i++)
            if (bottom.Points[i].Offset(dx, dy) != top.Points[i])
                return false;
        return true;
    }

    private static (Vector128<float> Low, Vector128<float> High) Around(GridTriangle[] triangles)
    {
        (Vector128<float> low, Vector128<float> high) = BoxOf(triangles[0]);
        foreach (GridTriangle t in triangles)
        {
            (Vector128<float> least, Vector128<float> most) = BoxOf(t);
            (low, high) = (Vector128.Min(low, least), Vector128.Max(high, most));
        }
        return (low, high);
    }

    private static (Vector128<float> Low, Vector128<float> High) BoxOf(GridTriangle t)
    {
        Vector128<float> a = At(t.A),
            b = At(t.B),
            c = At(t.C);
        return (Vector128.Min(a, Vector128.Min(b, c)), Vector128.Max(a, Vector128.Max(b, c)));
    }

    private static Vector128<float> At(GridPoint3D p) => Vector128.Create((float)p.X, p.Y, p.Z, 0);
}
