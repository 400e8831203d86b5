using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>The rings of lofts that end and begin at one level.</summary>
internal static class LevelRings
{
    /// <summary>Whether both sets have the same rings, outer as outer and hole as hole, wherever each begins.</summary>
    internal static bool AreSame(IEnumerable<Region> ending, IEnumerable<Region> beginning)
    {
        var known = new Dictionary<(GridPoint Least, bool Hole), Outline>();
        foreach ((Outline ring, bool hole) in RingsOf(ending))
            if (!known.TryAdd((ring.Points[Least(ring)], hole), ring))
                return false;
        foreach ((Outline ring, bool hole) in RingsOf(beginning))
            if (!known.Remove((ring.Points[Least(ring)], hole), out Outline? same) || !IsSame(ring, same))
                return false;
        return known.Count == 0;
    }

    private static IEnumerable<(Outline Ring, bool Hole)> RingsOf(IEnumerable<Region> regions) =>
        regions.SelectMany(r => r.Rings.Select((ring, i) => (ring, i > 0)));

    private static int Least(Outline ring)
    {
        int least = 0;
        for (int i = 1; i < ring.Count; i++)
            if (ring.Points[i] < ring.Points[least])
                least = i;
        return least;
    }

    private static bool IsSame(Outline a, Outline b)
    {
        if (ReferenceEquals(a, b))
            return true;
        if (a.Count != b.Count)
            return false;
        int shift = Least(b) - Least(a) + a.Count;
        for (int i = 0; i < a.Count; i++)
            if (a.Points[i] != b.Points[(i + shift) % a.Count])
                return false;
        return true;
    }
}
