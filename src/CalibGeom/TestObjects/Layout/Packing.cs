using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// Places parts close together without breaking their distances or lanes: one after the other, each where the rectangle
/// round all parts grows least. A few orders are tried and the smallest result is kept. The same parts give the same
/// places.
/// </summary>
internal static class Packing
{
    /// <summary>
    /// Width over depth, or depth over width and a half, up to which a plinth is not called slim: a hand holds it and
    /// it does not warp.
    /// </summary>
    private const double Slimmest = 1.5;

    /// <summary>
    /// Share of the square of the excess that a slim plinth costs in area: at twice the limit a quarter more, found by
    /// looking at the presets.
    /// </summary>
    private const double SlimCost = 0.25;

    /// <summary>
    /// How much a place off the middle costs, mm2 a mm: less than any real saving of area, so that it only breaks ties.
    /// </summary>
    private const double OffCentreCost = 0.01;

    /// <summary>
    /// Positions are told apart by 2^-16 mm: far finer than the grid, coarser than what sums leave behind.
    /// </summary>
    private const double Step = 65536;

    /// <summary>How much wider lanes of light become by and by, mm on each side, until enough light passes.</summary>
    private static readonly double[] Wider = [0, 2, 4, 7, 11];

    /// <summary>What a way over the plinth costs that light must take before an opening, mm2 a mm.</summary>
    private const double InsideCost = 20;

    /// <summary>The places of all parts, in the order given.</summary>
    internal static Placement[] Of(IReadOnlyList<ITestPart> parts) => Smallest(parts, 0, 0, seen: false).Placed;

    /// <summary>
    /// The places of all parts, in the order given, those with openings near the edge: where enough light passes all
    /// openings, if that can be.
    /// </summary>
    /// <param name="parts">The parts.</param>
    /// <param name="plinthTop">Top of the plinth above the plate, mm.</param>
    internal static Placement[] Seen(IReadOnlyList<ITestPart> parts, double plinthTop)
    {
        Placement[] best = [];
        double bestShare = -1;
        for (int i = 0; i < Wider.Length && bestShare < SightLines.LeastShare; i++)
        {
            (Placement[] placed, double share) = Smallest(parts, plinthTop, Wider[i], seen: true);
            if (share > bestShare)
                (best, bestShare) = (placed, share);
        }
        return best;
    }

    /// <summary>The smallest of a few orders; of those that let light pass, when there are any.</summary>
    private static (Placement[] Placed, double Share) Smallest(
        IReadOnlyList<ITestPart> parts,
        double plinthTop,
        double wider,
        bool seen
    )
    {
        Placement[] best = [];
        (double bestCost, double bestShare) = (double.PositiveInfinity, -1);
        Candidate[] candidates = [.. parts.Select(p => new Candidate(p, wider, seen))];
        var tried = new List<Candidate[]>();
        foreach (Candidate[] some in Orders(candidates))
        {
            Candidate[] order = seen ? [.. some.OrderBy(c => c.Turn)] : some;
            if (tried.Exists(t => t.SequenceEqual(order)))
                continue;
            tried.Add(order);
            Placement[] placed = Pack(order);
            Rect bounds = BoundsOf(placed);
            double cost = CostOf(bounds),
                share = seen ? Share(placed, bounds.Grow(Proportions.PlinthMargin), plinthTop) : 1;
            if (share < bestShare || share == bestShare && cost >= bestCost - Rect.Slack)
                continue;
            best = [.. candidates.Select(c => placed[Array.IndexOf(order, c)])];
            (bestCost, bestShare) = (cost, share);
        }
        return (best, bestShare);
    }

    /// <summary>The share of light that passes, up to what is enough.</summary>
    private static double Share(Placement[] placed, Rect plinth, double top) =>
        Math.Min(SightLines.Of(placed, plinth, top).Worst(placed).Share, SightLines.LeastShare);

    /// <summary>The rectangle round all parts.</summary>
    internal static Rect BoundsOf(IEnumerable<Placement> placed) =>
        placed.Select(p => p.Placed.Bounds).Aggregate((a, b) => a.Join(b));

    /// <summary>
    /// Large parts first, in five ways: as they come; parts of several pieces first, then last; in the order given;
    /// parts that can be reshaped last, to fill what is left.
    /// </summary>
    private static IEnumerable<Candidate[]> Orders(Candidate[] parts)
    {
        Candidate[] bySize = [.. parts.OrderByDescending(i => i.Area)];
        yield return [.. bySize.OrderBy(i => i.IsLow)];
        yield return
        [
            .. bySize.OrderBy(i =>
                i.IsLow ? 2
                : i.HasPieces ? 0
                : 1
            ),
        ];
        yield return
        [
            .. bySize.OrderBy(i =>
                i.IsLow ? 2
                : i.HasPieces ? 1
                : 0
            ),
        ];
        yield return [.. parts.OrderBy(i => i.IsLow)];
        yield return
        [
            .. bySize.OrderBy(i =>
                i.IsLow ? 1
                : i.HasWays ? 2
                : 0
            ),
        ];
    }

    private static Placement[] Pack(Candidate[] order)
    {
        var placed = new List<Placement>(order.Length);
        foreach (Candidate part in order)
            placed.Add(Best(placed, part));
        return [.. placed];
    }

    private static Placement Best(List<Placement> placed, Candidate part)
    {
        if (placed.Count == 0)
            return new Placement(part.Ways[0].Part, 0, 0, 0, part.Sight);
        Rect bounds = BoundsOf(placed);
        (ITestPart Part, double X, double Y, int Quarters) best = default;
        double bestCost = double.PositiveInfinity;
        foreach ((ITestPart way, int quarters, PartFootprint form) in part.Ways)
        {
            double[] xs = Positions(placed, form, r => (r.X0, r.X1)),
                ys = Positions(placed, form, r => (r.Y0, r.Y1));
            Rect own = form.Bounds;
            var room = new FreeRoom(placed, form);
            foreach (double x in xs)
            foreach (double y in ys)
            {
                Rect moved = own.Move(x, y),
                    grown = bounds.Join(moved);
                double cost = CostOf(grown) + OffCentre(grown, moved) + part.Inside(form, grown, x, y);
                if (cost < bestCost && room.IsFree(x, y))
                    (best, bestCost) = ((way, x, y, quarters), cost);
            }
        }
        return new Placement(best.Part!, best.X, best.Y, best.Quarters, part.Sight);
    }

    /// <summary>Area, dearer for slim rectangles.</summary>
    private static double CostOf(Rect r)
    {
        double width = r.Width + 2 * Proportions.PlinthMargin,
            depth = r.Depth + 2 * Proportions.PlinthMargin;
        double slim = Math.Max(0, Math.Max(width / depth, depth / width * Slimmest) - Slimmest);
        return width * depth * (1 + slim * slim * SlimCost);
    }

    /// <summary>Breaks ties: towards the middle.</summary>
    private static double OffCentre(Rect all, Rect part) =>
        OffCentreCost * (Math.Abs(all.X0 + all.X1 - part.X0 - part.X1) + Math.Abs(all.Y0 + all.Y1 - part.Y0 - part.Y1));

    /// <summary>
    /// Positions along one axis at which the part just keeps its distance from, or lines up with, one that stands
    /// already.
    /// </summary>
    private static double[] Positions(
        List<Placement> placed,
        PartFootprint form,
        Func<Rect, (double From, double To)> side
    )
    {
        var positions = new List<double>();
        foreach (Placement other in placed)
        {
            double gap = Placement.Gap(form, other.Placed);
            foreach (Rect r in form.Solids)
            {
                foreach (Rect o in other.Placed.Solids)
                    AddBeside(side(o), side(r), gap, lineUp: true);
                foreach (Lane lane in other.Placed.Lanes)
                    if (Placement.DistanceFrom(lane.Kind, form.Height) is { } distance)
                        AddBeside(side(lane.Room), side(r), distance, lineUp: false);
            }
            foreach (Lane lane in form.Lanes)
            foreach (Rect o in other.Placed.Solids)
                AddBeside(side(o), side(lane.Room), 0, lineUp: false);
        }
        (double start, double end) = side(BoundsOf(placed));
        (double formStart, double formEnd) = side(form.Bounds);
        positions.Add(Rounded((start + end - formStart - formEnd) / 2));
        positions.Sort();
        return [.. positions.Where((p, i) => i == 0 || p != positions[i - 1])];

        void AddBeside((double From, double To) there, (double From, double To) here, double gap, bool lineUp)
        {
            positions.Add(Rounded(there.To + gap - here.From));
            positions.Add(Rounded(there.From - gap - here.To));
            if (!lineUp)
                return;
            positions.Add(Rounded(there.From - here.From));
            positions.Add(Rounded(there.To - here.To));
        }
    }

    /// <summary>Equal positions that were reached by different sums become one.</summary>
    private static double Rounded(double position) => Math.Round(position * Step) / Step;

    /// <summary>A part with all ways in which it may stand.</summary>
    private sealed class Candidate
    {
        private readonly bool nearEdge;

        internal Candidate(ITestPart part, double sight, bool nearEdge)
        {
            Sight = sight;
            this.nearEdge = nearEdge && part.Footprint.Openings.Count > 0;
            Ways =
            [
                .. from way in part.OtherWays.Prepend(part)
                let form = way.Footprint.WithSight(sight)
                from quarters in Enumerable.Range(0, form.MayTurn ? 2 : 1)
                select (way, quarters, form.At(0, 0, quarters)),
            ];
            PartFootprint first = Ways[0].Form;
            Area = first.Bounds.Width * first.Bounds.Depth;
            IsLow = first.Height == PartHeight.Low;
            HasPieces = first.Solids.Count > 1;
            HasWays = part.OtherWays.Count > 0;
        }

        internal (ITestPart Part, int Quarters, PartFootprint Form)[] Ways { get; }

        /// <summary>How much wider its lanes of light are than it asks for, mm.</summary>
        internal double Sight { get; }

        internal double Area { get; }

        internal bool IsLow { get; }

        internal bool HasPieces { get; }

        internal bool HasWays { get; }

        /// <summary>What stands near the edge is placed when the edge is known, and before labels.</summary>
        internal int Turn =>
            IsLow ? 2
            : nearEdge ? 1
            : 0;

        /// <summary>
        /// What it costs in a place that its openings lead far over the plinth on their shorter side; 0 when it may
        /// stand anywhere.
        /// </summary>
        internal double Inside(PartFootprint form, Rect all, double x, double y)
        {
            if (!nearEdge)
                return 0;
            Rect own = form.Bounds.Move(x, y);
            return InsideCost
                * (
                    form.Openings[0].AlongX
                        ? Math.Min(own.X0 - all.X0, all.X1 - own.X1)
                        : Math.Min(own.Y0 - all.Y0, all.Y1 - own.Y1)
                );
        }
    }
}
