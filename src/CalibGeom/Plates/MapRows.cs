namespace CalibGeom.Plates;

/// <summary>
/// The ways in which coupons of a map are set when each near its own point leaves strips too narrow for the last: row
/// after row from a corner, or column after column, in either turn or those of one size all in the same.
/// </summary>
internal static class MapRows
{
    /// <summary>mm, and the slant at which rows are filled from there: a row is full before the next begins.</summary>
    private const double FarAway = 1e6,
        Lean = 0.02;

    // Longer labels make longer coupons, so that a map has two sizes or three; with more, all are turned alike.
    private const int MostSizes = 3;

    /// <summary>What each way aims at, and the turns of each coupon, by its number.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="footprints">The turns that each coupon may have.</param>
    internal static IEnumerable<(RoomGoal Goal, Footprint[][] Turns)> Of(Plate plate, Footprint[][] footprints)
    {
        foreach ((double lean, double far) in new[] { (Lean, 1.0), (1.0, Lean) })
        {
            // The distance to a point so far away grows with y (or x) and far more slowly with the other.
            (double X, double Y) away = (plate.MinX - lean * FarAway, plate.MinY - far * FarAway);
            var goal = new RoomGoal(_ => [away], 0, 1e-3);
            yield return (goal, footprints);
            foreach (Footprint[][] turned in TurnedAlike(footprints))
                yield return (goal, turned);
        }
    }

    private static IEnumerable<Footprint[][]> TurnedAlike(Footprint[][] footprints)
    {
        if (footprints.Any(turns => turns.Length < 2))
            yield break;
        var sizes = footprints.Select(SizeOf).Distinct().ToList();
        int free = sizes.Count <= MostSizes ? sizes.Count : 1;
        for (int turns = 0; turns < 1 << free; turns++)
            yield return Array.ConvertAll(footprints, f => new[] { f[turns >> sizes.IndexOf(SizeOf(f)) % free & 1] });
    }

    /// <summary>Width and depth to a hundredth of a millimetre.</summary>
    private static (double Width, double Depth) SizeOf(Footprint[] turns) =>
        (Math.Round(turns[0].Width, 2), Math.Round(turns[0].Depth, 2));
}
