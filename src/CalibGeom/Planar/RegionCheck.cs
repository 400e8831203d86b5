using System.Runtime.Intrinsics;

namespace CalibGeom.Planar;

/// <summary>The checks behind <see cref="Region"/>.</summary>
internal static class RegionCheck
{
    internal static void Validate(Outline outer, Outline[] holes)
    {
        if (holes.Length == 0)
            return;
        BoxTree border = BoxTree.OfRing(outer.Points);
        BoxTree[] edges = Array.ConvertAll(holes, h => BoxTree.OfRing(h.Points));
        for (int i = 0; i < holes.Length; i++)
        {
            if (Touch(outer, border, holes[i], edges[i]))
                throw new ArgumentException(
                    $"Hole {i} touches or crosses the outer border near {holes[i].Points[0]} mm.",
                    nameof(holes)
                );
            if (outer.Locate(holes[i].Points[0]) < 0)
                throw new ArgumentException(
                    $"Hole {i} lies outside the outer border, at {holes[i].Points[0]} mm.",
                    nameof(holes)
                );
        }
        Holes(holes).Pairs((i, j) => RequireApart(holes, edges, Math.Min(i, j), Math.Max(i, j)));
    }

    private static BoxTree Holes(Outline[] holes) => new(Array.ConvertAll(holes, BoxOf));

    private static (Vector128<float>, Vector128<float>) BoxOf(Outline ring)
    {
        (Vector128<float> low, Vector128<float> high) = BoxTree.Box(ring.Points[0], ring.Points[0]);
        foreach (GridPoint p in ring.Points)
        {
            (Vector128<float> at, _) = BoxTree.Box(p, p);
            (low, high) = (Vector128.Min(low, at), Vector128.Max(high, at));
        }
        return (low, high);
    }

    private static bool RequireApart(Outline[] holes, BoxTree[] edges, int j, int i) =>
        Touch(holes[i], edges[i], holes[j], edges[j])
        || holes[i].Locate(holes[j].Points[0]) > 0
        || holes[j].Locate(holes[i].Points[0]) > 0
            ? throw new ArgumentException(
                $"Holes {j} and {i} touch or overlap near {holes[i].Points[0]} mm.",
                nameof(holes)
            )
            : true;

    private static bool Touch(Outline a, BoxTree edgesOfA, Outline b, BoxTree edgesOfB)
    {
        bool touch = false;
        edgesOfA.Pairs(
            edgesOfB,
            (i, k) =>
            {
                ReadOnlySpan<GridPoint> p = a.Points,
                    q = b.Points;
                touch = Predicates.SegmentsTouch(
                    p[(i + p.Length - 1) % p.Length],
                    p[i],
                    q[(k + q.Length - 1) % q.Length],
                    q[k]
                );
                return !touch;
            }
        );
        return touch;
    }
}
