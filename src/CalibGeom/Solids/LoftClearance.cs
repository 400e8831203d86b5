using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>
/// The checks behind <see cref="Solid"/>: walls of a loft do not cross each other; walls of two lofts whose heights
/// overlap have no point in
/// common, and neither loft stands inside the other. All decisions are exact.
/// </summary>
internal static class LoftClearance
{
    internal static void Require(Loft[] lofts)
    {
        LoftWalls[] walls = Array.ConvertAll(lofts, l => new LoftWalls(l));
        for (int i = 0; i < walls.Length; i++)
            if (!walls[i].IsTranslation)
                RequireNoFold(walls[i], i);
        int[] order = [.. Enumerable.Range(0, walls.Length)];
        Array.Sort(Array.ConvertAll(order, i => walls[i].MinX), order);
        for (int s = 0; s < order.Length; s++)
        for (int t = s + 1; t < order.Length && walls[order[t]].MinX <= walls[order[s]].MaxX; t++)
            RequireApart(walls, Math.Min(order[s], order[t]), Math.Max(order[s], order[t]));
    }

    private static void RequireNoFold(LoftWalls walls, int index)
    {
        if (FirstPair(walls.Triangles, walls.Triangles, sameLoft: true) is { } place)
            throw new ArgumentException(
                $"The walls of loft {index} cross each other near {place} mm. Give both ends vertices that face "
                    + $"each other.",
                "lofts"
            );
    }

    private static void RequireApart(LoftWalls[] walls, int i, int j)
    {
        LoftWalls a = walls[i],
            b = walls[j];
        int from = Math.Max(a.BottomLevel, b.BottomLevel),
            to = Math.Min(a.TopLevel, b.TopLevel);
        if (from >= to || a.MaxY < b.MinY || b.MaxY < a.MinY)
            return;
        if (FirstPair(a.Triangles, b.Triangles, sameLoft: false) is { } place)
            throw new ArgumentException(
                $"Lofts {i} and {j} overlap or touch sideways near {place} mm. Move them apart, or let them "
                    + $"meet on a level plane.",
                "lofts"
            );
        if (a.Covers(b.Corner(from), b.Scale(from), from) || b.Covers(a.Corner(from), a.Scale(from), from))
            throw new ArgumentException(
                $"Lofts {i} and {j} overlap: one stands inside the other at {a.Triangles[0].A} mm. Leave one "
                    + $"out, or give the outer a hole.",
                "lofts"
            );
    }

    private static GridPoint3D? FirstPair(GridTriangle[] first, GridTriangle[] second, bool sameLoft)
    {
        Bounds[] firstBounds = Array.ConvertAll(first, Bounds.Of),
            secondBounds = sameLoft ? firstBounds : Array.ConvertAll(second, Bounds.Of);
        for (int i = 0; i < first.Length; i++)
        for (int j = sameLoft ? i + 1 : 0; j < second.Length; j++)
        {
            if (!firstBounds[i].Touches(secondBounds[j]))
                continue;
            if (sameLoft ? GridTriangles.Meet(first[i], second[j]) : GridTriangles.Touch(first[i], second[j]))
                return first[i].A;
        }
        return null;
    }

    private readonly record struct Bounds(GridPoint3D Min, GridPoint3D Max)
    {
        internal static Bounds Of(GridTriangle t) =>
            new(
                new(
                    Math.Min(t.A.X, Math.Min(t.B.X, t.C.X)),
                    Math.Min(t.A.Y, Math.Min(t.B.Y, t.C.Y)),
                    Math.Min(t.A.Z, Math.Min(t.B.Z, t.C.Z))
                ),
                new(
                    Math.Max(t.A.X, Math.Max(t.B.X, t.C.X)),
                    Math.Max(t.A.Y, Math.Max(t.B.Y, t.C.Y)),
                    Math.Max(t.A.Z, Math.Max(t.B.Z, t.C.Z))
                )
            );

        internal bool Touches(Bounds other) =>
            Min.X <= other.Max.X
            && other.Min.X <= Max.X
            && Min.Y <= other.Max.Y
            && other.Min.Y <= Max.Y
            && Min.Z <= other.Max.Z
            && other.Min.Z <= Max.Z;
    }
}
