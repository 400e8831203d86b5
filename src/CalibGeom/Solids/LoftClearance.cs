using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>
/// The checks behind <see cref="Solid"/>: walls of a loft do not cross each other; walls of two lofts whose heights
/// overlap have no point in common, and neither loft stands inside the other. All decisions are exact.
/// </summary>
internal static class LoftClearance
{
    internal static void Require(Loft[] lofts, CancellationToken cancellation)
    {
        LoftWalls[] walls = Array.ConvertAll(lofts, Walls);
        for (int i = 0; i < walls.Length; i++)
            if (!walls[i].IsTranslation && !walls[i].CannotCross)
                RequireNoFold(walls[i], i);
        new BoxTree(Array.ConvertAll(walls, w => w.Box)).Pairs(
            (i, j) =>
            {
                cancellation.ThrowIfCancellationRequested();
                RequireApart(walls, Math.Min(i, j), Math.Max(i, j));
                return true;
            }
        );

        LoftWalls Walls(Loft loft)
        {
            cancellation.ThrowIfCancellationRequested();
            return new LoftWalls(loft);
        }
    }

    private static void RequireNoFold(LoftWalls walls, int index)
    {
        if (FirstPair(walls, walls) is { } place)
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
        if (from >= to)
            return;
        if (FirstPair(a, b) is { } place)
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

    /// <summary>A corner of the first triangle, by number, that meets one of the others; null when none does.</summary>
    private static GridPoint3D? FirstPair(LoftWalls first, LoftWalls second)
    {
        bool same = ReferenceEquals(first, second);
        int met = int.MaxValue;
        bool Examine(int i, int j)
        {
            int low = same ? Math.Min(i, j) : i;
            if (low >= met)
                return true;
            ref readonly GridTriangle s = ref first.Triangles[i],
                t = ref second.Triangles[j];
            if (same ? GridTriangles.Meet(s, t) : GridTriangles.Touch(s, t))
                met = low;
            return true;
        }
        if (same)
            first.Tree.Pairs(Examine);
        else
            first.Tree.Pairs(second.Tree, Examine);
        return met < int.MaxValue ? first.Triangles[met].A : null;
    }
}
