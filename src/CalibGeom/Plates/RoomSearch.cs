namespace CalibGeom.Plates;

/// <summary>
/// Finds the best of all free places by branch and bound. The space of places is the plane of translations, for each
/// turn; the distance between footprint and obstacles changes by no more than the translation does, so one distance
/// settles a whole rectangle of places: all blocked when even its far corners cannot reach the gap. Rectangles are
/// split down to single steps of the grid, so that a slot exactly as wide as coupon and gaps is found too.
/// </summary>
internal sealed class RoomSearch
{
    /// <summary>
    /// Rectangles examined before a search gives up; only slots that fail by less than a micrometre need so many.
    /// </summary>
    private const int Budget = 300_000;
    private const double GridStep = 1.0 / Planar.Grid.UnitsPerMillimetre;
    private const double Rounding = 1e-9;

    private readonly Plate plate;
    private readonly IReadOnlyList<PlanarTriangles> obstacles;
    private readonly double gap;
    private readonly PerAxis? pitch;
    private readonly CancellationToken cancellation;

    internal RoomSearch(
        Plate plate,
        IReadOnlyList<PlanarTriangles> obstacles,
        double gap,
        PerAxis? pitch,
        CancellationToken cancellation = default
    ) =>
        (this.plate, this.obstacles, this.gap, this.pitch, this.cancellation) = (
            plate,
            obstacles,
            gap,
            pitch,
            cancellation
        );

    /// <summary>The best place for one of the footprints, or null when there is none.</summary>
    internal RoomSpot? Find(IReadOnlyList<Footprint> turns, RoomGoal goal)
    {
        var run = new Run(goal, turns.Select(goal.Targets).ToArray());
        foreach (Footprint footprint in turns)
            if (Range(footprint, run.Next++) is { } whole)
                run.Queue.Enqueue(whole, (0, run.Next));
        for (int left = Budget; left > 0 && run.Queue.TryDequeue(out Cell cell, out (double Bound, int) key); left--)
        {
            cancellation.ThrowIfCancellationRequested();
            if (key.Bound >= run.BestCost - goal.Tolerance)
                break;
            Examine(cell, turns[cell.Turn], run);
        }
        return run.Best;
    }

    private void Examine(Cell cell, Footprint footprint, Run run)
    {
        var targets = run.Targets[cell.Turn];
        (double minX, double minY, double maxX, double maxY) = (
            At(cell.X0, 0),
            At(cell.Y0, 1),
            At(cell.X1, 0),
            At(cell.Y1, 1)
        );
        long middleX = (cell.X0 + cell.X1) >> 1,
            middleY = (cell.Y0 + cell.Y1) >> 1;
        double x = At(middleX, 0),
            y = At(middleY, 1);
        double reach = double.Hypot(Math.Max(maxX - x, x - minX), Math.Max(maxY - y, y - minY)) + Rounding;
        double distance = Try(footprint, cell.Turn, x, y, run);
        if (distance + reach < gap || Blocked(footprint, x, y, reach))
            return;
        (double bound, int target) = RoomGoal.Nearest(
            targets,
            minX + footprint.CentreX,
            minY + footprint.CentreY,
            maxX + footprint.CentreX,
            maxY + footprint.CentreY
        );
        bound += run.Goal.ObstacleWeight * Math.Max(0, distance - reach - gap) + cell.Turn * Run.TurnTie;
        if (bound >= run.BestCost - run.Goal.Tolerance)
            return;
        long bestX = Math.Clamp(Nearest(targets[target].X - footprint.CentreX, 0), cell.X0, cell.X1);
        long bestY = Math.Clamp(Nearest(targets[target].Y - footprint.CentreY, 1), cell.Y0, cell.Y1);
        if ((bestX, bestY) != (middleX, middleY))
            Try(footprint, cell.Turn, At(bestX, 0), At(bestY, 1), run);
        foreach (Cell child in cell.Split(middleX, middleY))
            run.Queue.Enqueue(child, (bound, run.Next++));
    }

    /// <summary>
    /// Notes a place when it is free and better than the best so far; returns its distance to the obstacles.
    /// </summary>
    private double Try(Footprint footprint, int turn, double x, double y, Run run)
    {
        double limit = run.Goal.ObstacleWeight > 0 ? 1e4 : gap;
        double distance = limit;
        foreach (PlanarTriangles tree in obstacles)
            distance = Math.Min(distance, tree.Distance(footprint.Tree, x, y, distance));
        if (distance < gap - Rounding)
            return distance;
        double cx = x + footprint.CentreX,
            cy = y + footprint.CentreY;
        double cost =
            RoomGoal.Nearest(run.Targets[turn], cx, cy, cx, cy).Distance
            + run.Goal.ObstacleWeight * (distance - gap)
            + turn * Run.TurnTie;
        if (cost < run.BestCost)
            (run.BestCost, run.Best) = (cost, new RoomSpot(footprint, x, y));
        return distance;
    }

    /// <summary>Whether the disc inside the footprint alone blocks all places within reach.</summary>
    private bool Blocked(Footprint footprint, double x, double y, double reach)
    {
        double limit = gap + footprint.DiscRadius;
        if (reach >= limit)
            return false;
        foreach (PlanarTriangles tree in obstacles)
            if (tree.Distance(x + footprint.DiscX, y + footprint.DiscY, limit) + reach < limit)
                return true;
        return false;
    }

    private Cell? Range(Footprint footprint, int turn)
    {
        double inset = plate.Margin + gap;
        (long X0, long X1)? x = Range(
            plate.MinX + inset - footprint.Tree.MinX,
            plate.MaxX - inset - footprint.Tree.MaxX,
            0
        );
        (long Y0, long Y1)? y = Range(
            plate.MinY + inset - footprint.Tree.MinY,
            plate.MaxY - inset - footprint.Tree.MaxY,
            1
        );
        return x is { } h && y is { } v ? new Cell(turn, h.X0, v.Y0, h.X1, v.Y1) : null;
    }

    private (long First, long Last)? Range(double low, double high, int axis)
    {
        long first = Nearest(low, axis) - 1,
            last = Nearest(high, axis) + 1;
        while (first <= last && At(first, axis) < low - Rounding)
            first++;
        while (first <= last && At(last, axis) > high + Rounding)
            last--;
        return first <= last ? (first, last) : null;
    }

    private double Step(int axis) =>
        pitch is { } p
            ? axis == 0
                ? p.X
                : p.Y
            : GridStep;

    private double Origin(int axis) =>
        pitch is null ? 0
        : axis == 0 ? plate.CentreX
        : plate.CentreY;

    private long Nearest(double value, int axis) => (long)Math.Round((value - Origin(axis)) / Step(axis));

    private double At(long step, int axis) => Math.Round((Origin(axis) + step * Step(axis)) / GridStep) * GridStep;

    private readonly record struct Cell(int Turn, long X0, long Y0, long X1, long Y1)
    {
        internal IEnumerable<Cell> Split(long x, long y)
        {
            if (X0 == X1 && Y0 == Y1)
                yield break;
            yield return this with
            {
                X1 = x,
                Y1 = y,
            };
            if (x < X1)
                yield return this with
                {
                    X0 = x + 1,
                    Y1 = y,
                };
            if (y < Y1)
                yield return this with
                {
                    X1 = x,
                    Y0 = y + 1,
                };
            if (x < X1 && y < Y1)
                yield return this with
                {
                    X0 = x + 1,
                    Y0 = y + 1,
                };
        }
    }

    private sealed class Run(RoomGoal goal, (double X, double Y)[][] targets)
    {
        /// <summary>An untold preference for standing unturned.</summary>
        internal const double TurnTie = 1e-5;

        internal RoomGoal Goal { get; } = goal;

        internal (double X, double Y)[][] Targets { get; } = targets;

        internal PriorityQueue<Cell, (double Bound, int Order)> Queue { get; } = new();

        internal int Next { get; set; }

        internal double BestCost { get; set; } = double.PositiveInfinity;

        internal RoomSpot? Best { get; set; }
    }
}
