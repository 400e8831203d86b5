using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// Places parts close together without breaking their distances or lanes: one after the other, each where the rectangle
/// round all parts
/// grows least. A few orders are tried and the smallest result is kept. The same parts give the same places.
/// </summary>
internal static class Packing
{
    private const double Slimmest = 1.5;

    /// <summary>The places of all parts, in the order of the items given.</summary>
    internal static Placement[] Of(IReadOnlyList<LayoutItem> items)
    {
        Placement[]? best = null;
        double bestCost = double.PositiveInfinity;
        foreach (LayoutItem[] order in Orders(items))
        {
            Placement[] placed = Pack(order);
            double cost = CostOf(BoundsOf(placed));
            if (cost >= bestCost - Rect.Slack)
                continue;
            (best, bestCost) = (placed, cost);
        }
        return [.. items.Select(i => best!.First(p => p.Item == i))];
    }

    /// <summary>The rectangle round all parts.</summary>
    internal static Rect BoundsOf(IEnumerable<Placement> placed) =>
        placed.Select(p => p.Placed.Bounds).Aggregate((a, b) => a.Join(b));

    private static IEnumerable<LayoutItem[]> Orders(IReadOnlyList<LayoutItem> items)
    {
        LayoutItem[] bySize = [.. items.OrderByDescending(i => i.Forms[0].Bounds.Width * i.Forms[0].Bounds.Depth)];
        yield return [.. bySize.OrderBy(i => i.IsLabel)];
        yield return
        [
            .. bySize.OrderBy(i =>
                i.IsLabel ? 2
                : i.Forms[0].Solids.Length > 1 ? 0
                : 1
            ),
        ];
        yield return
        [
            .. bySize.OrderBy(i =>
                i.IsLabel ? 2
                : i.Forms[0].Solids.Length > 1 ? 1
                : 0
            ),
        ];
        yield return [.. items.OrderBy(i => i.IsLabel)];
        yield return
        [
            .. bySize.OrderBy(i =>
                i.Name == "columns" ? 2
                : i.IsLabel ? 1
                : 0
            ),
        ];
    }

    private static Placement[] Pack(LayoutItem[] order)
    {
        var placed = new List<Placement>(order.Length);
        foreach (LayoutItem item in order)
            placed.Add(Best(placed, item));
        return [.. placed];
    }

    private static Placement Best(List<Placement> placed, LayoutItem item)
    {
        if (placed.Count == 0)
            return new Placement(item, item.Forms[0], 0, 0);
        Rect bounds = BoundsOf(placed);
        Placement? best = null;
        double bestCost = double.PositiveInfinity;
        foreach (Footprint form in item.Forms)
        {
            double[] xs = Candidates(placed, item, form, r => (r.X0, r.X1)),
                ys = Candidates(placed, item, form, r => (r.Y0, r.Y1));
            foreach (double x in xs)
            foreach (double y in ys)
            {
                Rect grown = bounds.Join(form.Bounds.Move(x, y));
                double cost = CostOf(grown) + Eccentricity(grown, form.Bounds.Move(x, y));
                if (cost >= bestCost || !IsFree(placed, item, form, x, y))
                    continue;
                (best, bestCost) = (new Placement(item, form, x, y), cost);
            }
        }
        return best!;
    }

    private static bool IsFree(List<Placement> placed, LayoutItem item, Footprint form, double x, double y)
    {
        foreach (Placement other in placed)
            if (!other.Allows(item, form, x, y))
                return false;
        return true;
    }

    /// <summary>Area, dearer for slim rectangles.</summary>
    private static double CostOf(Rect r)
    {
        double width = r.Width + 2 * Proportions.PlinthMargin,
            depth = r.Depth + 2 * Proportions.PlinthMargin;
        double slim = Math.Max(0, Math.Max(width / depth, depth / width * Slimmest) - Slimmest);
        return width * depth * (1 + slim * slim / 4);
    }

    /// <summary>Breaks ties: towards the middle.</summary>
    private static double Eccentricity(Rect all, Rect part) =>
        0.01 * (Math.Abs(all.X0 + all.X1 - part.X0 - part.X1) + Math.Abs(all.Y0 + all.Y1 - part.Y0 - part.Y1));

    /// <summary>
    /// Positions along one axis at which the part just keeps its distance from, or lines up with, one that stands
    /// already.
    /// </summary>
    private static double[] Candidates(
        List<Placement> placed,
        LayoutItem item,
        Footprint form,
        Func<Rect, (double From, double To)> side
    )
    {
        var positions = new SortedSet<double>();
        foreach (Placement other in placed)
        {
            double gap = item.GapTo(other.Item);
            foreach (Rect r in form.Solids)
            {
                foreach (Rect o in other.Placed.Solids)
                    AddBeside(side(o), side(r), gap, lineUp: true);
                foreach (Rect o in other.Placed.Lanes)
                    AddBeside(side(o), side(r), item.IsLabel ? Proportions.LabelToLane : 0, lineUp: false);
            }
            foreach (Rect lane in form.Lanes)
            foreach (Rect o in other.Placed.Solids)
                AddBeside(side(o), side(lane), 0, lineUp: false);
        }
        (double start, double end) = side(BoundsOf(placed));
        (double formStart, double formEnd) = side(form.Bounds);
        positions.Add(Rounded((start + end - formStart - formEnd) / 2));
        return [.. positions];

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
    private static double Rounded(double position) => Math.Round(position * 65536) / 65536;
}
