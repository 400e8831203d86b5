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
    private GridTriangle[]? triangles;
    private BoxTree? tree;

    internal LoftWalls(Loft loft)
    {
        this.loft = loft;
        Box = Around(loft);
    }

    /// <summary>The walls, made when they are first asked for: most lofts come near no other.</summary>
    internal GridTriangle[] Triangles => triangles ??= TrianglesOf(loft);

    /// <summary>The box round all walls; grid values are exact in 32-bit floats.</summary>
    internal (Vector128<float> Low, Vector128<float> High) Box { get; }

    /// <summary>The bounds of the triangles.</summary>
    internal BoxTree Tree => tree ??= new BoxTree(Array.ConvertAll(Triangles, BoxOf));

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
    /// Whether it is plain that no wall can cross another: an upright or leaning axis sees every wall of a ring from
    /// inside, for each ring, and all bounds of a hole lie where they see every wall of the outer ring and no other
    /// hole. A point sees every wall where each section is star-shaped about it. Section edges keep the direction of a
    /// bottom or top edge, and on which side of one a point lies changes evenly with height, so that both ends decide.
    /// </summary>
    internal bool CannotCross
    {
        get
        {
            Outline[] bottoms = [.. loft.Bottom.Rings],
                tops = [.. loft.Top.Rings];
            var bounds = new (GridPoint Low, GridPoint High)[bottoms.Length];
            for (int i = 0; i < bottoms.Length; i++)
            {
                (GridPoint Low, GridPoint High) low = BoundsOf(bottoms[i].Points),
                    high = BoundsOf(tops[i].Points);
                if (!Sees(bottoms[i], tops[i], MiddleOf(low), MiddleOf(high)))
                    return false;
                bounds[i] = Joined(low, high);
                if (i > 0 && !(SeesOuter(bottoms[0], tops[0], bounds[i]) && AreApart(bounds.AsSpan(1..i), bounds[i])))
                    return false;
            }
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

    /// <summary>Whether a point that moves from the bottom to the top sees every wall of a ring from inside.</summary>
    private static bool Sees(Outline bottomRing, Outline topRing, GridPoint low, GridPoint high)
    {
        ReadOnlySpan<GridPoint> bottom = bottomRing.Points,
            top = topRing.Points;
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

    /// <summary>Whether every point of a rectangle, at every height, sees every wall of a ring from inside.</summary>
    private static bool SeesOuter(Outline bottom, Outline top, (GridPoint Low, GridPoint High) box)
    {
        foreach (int x in (ReadOnlySpan<int>)[box.Low.X, box.High.X])
        foreach (int y in (ReadOnlySpan<int>)[box.Low.Y, box.High.Y])
            if (!Sees(bottom, top, new(x, y), new(x, y)))
                return false;
        return true;
    }

    private static bool AreApart(
        ReadOnlySpan<(GridPoint Low, GridPoint High)> boxes,
        (GridPoint Low, GridPoint High) box
    )
    {
        foreach ((GridPoint low, GridPoint high) in boxes)
            if (low.X <= box.High.X && box.Low.X <= high.X && low.Y <= box.High.Y && box.Low.Y <= high.Y)
                return false;
        return true;
    }

    private static (GridPoint Low, GridPoint High) BoundsOf(ReadOnlySpan<GridPoint> ring)
    {
        (GridPoint Low, GridPoint High) bounds = (ring[0], ring[0]);
        foreach (GridPoint p in ring)
            bounds = Joined(bounds, (p, p));
        return bounds;
    }

    private static (GridPoint Low, GridPoint High) Joined(
        (GridPoint Low, GridPoint High) a,
        (GridPoint Low, GridPoint High) b
    ) =>
        (
            new(Math.Min(a.Low.X, b.Low.X), Math.Min(a.Low.Y, b.Low.Y)),
            new(Math.Max(a.High.X, b.High.X), Math.Max(a.High.Y, b.High.Y))
        );

    private static GridPoint MiddleOf((GridPoint Low, GridPoint High) box) =>
        new((box.Low.X + box.High.X) / 2, (box.Low.Y + box.High.Y) / 2);

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

    private static (Vector128<float> Low, Vector128<float> High) Around(Loft loft)
    {
        (GridPoint low, GridPoint high) = Joined(BoundsOf(loft.Bottom.Outer.Points), BoundsOf(loft.Top.Outer.Points));
        // An oblique underside is not below the level at which the loft begins.
        return (At(new(low, loft.BottomLevel)), At(new(high, loft.TopLevel)));
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
