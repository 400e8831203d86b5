namespace CalibGeom.Plates;

/// <summary>
/// What a search prefers: the middle of the footprint near one of some points, and, by a weight, near the obstacles.
/// </summary>
/// <param name="Targets">For a footprint, the points; earlier ones win ties.</param>
/// <param name="ObstacleWeight">How many mm towards a target one mm towards the obstacles is worth.</param>
/// <param name="Tolerance">By how much the place found may be worse than the best, mm; infinite takes any
/// place.</param>
internal sealed record RoomGoal(
    Func<Footprint, (double X, double Y)[]> Targets,
    double ObstacleWeight,
    double Tolerance
)
{
    private const double Tie = 1e-6;

    /// <summary>The least distance from a target to a rectangle.</summary>
    internal static (double Distance, int Target) Nearest(
        (double X, double Y)[] targets,
        double minX,
        double minY,
        double maxX,
        double maxY
    )
    {
        (double Distance, int Target) best = (double.PositiveInfinity, 0);
        for (int i = 0; i < targets.Length; i++)
        {
            double gx = Math.Max(0, Math.Max(minX - targets[i].X, targets[i].X - maxX));
            double gy = Math.Max(0, Math.Max(minY - targets[i].Y, targets[i].Y - maxY));
            double distance = double.Hypot(gx, gy) + i * Tie;
            if (distance < best.Distance)
                best = (distance, i);
        }
        return best;
    }
}
