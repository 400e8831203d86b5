namespace CalibGeom.TestObjects.Parts;

/// <summary>The public records of a plan.</summary>
internal static class PlanRecords
{
    internal static IReadOnlyList<BoxPlan> Boxes(ObjectPlan plan) =>
        [
            .. plan.Boxes.Select(
                (box, i) =>
                    new BoxPlan(
                        i + 1,
                        plan.Spec.Nest!.Sizes[i],
                        box.Frame.Outside,
                        box.Frame.Inside,
                        i + 1 == plan.Boxes.Length
                    )
                    {
                        X = plan.PlaceOf(i).X,
                        Y = plan.PlaceOf(i).Y,
                        BandBottom = plan.PlinthTop + box.BandBottom,
                        BandTop = plan.PlinthTop + box.BandTop,
                        PocketFloor = plan.PlinthTop + box.PocketFloor,
                        Rim = plan.PlinthTop + box.Rim,
                        Height = box.Rim,
                    }
            ),
        ];

    internal static IReadOnlyList<JointPlan> Joints(ObjectPlan plan) =>
        [.. plan.Boxes.Skip(1).Select((outer, i) => Joint(plan, i + 1, plan.Boxes[i], outer))];

    internal static IReadOnlyList<ColumnPlan> Columns(ObjectPlan plan) =>
        plan.Columns is not { } block
            ? []
            :
            [
                .. Enumerable
                    .Range(0, block.Roots.Length)
                    .Select(i => new ColumnPlan(
                        i + 1,
                        block.Diameter(i),
                        LoadRatio(plan, i),
                        plan.RootOf(i).XMillimetres,
                        plan.RootOf(i).YMillimetres,
                        block.Place[i] / block.PerRow + 1,
                        block.Place[i] % block.PerRow + 1
                    )),
            ];

    private static double LoadRatio(ObjectPlan plan, int column)
    {
        if (!plan.Columns!.Part(column).HasHead)
            return 1;
        double ratio = plan.Spec.Columns!.HeadDiameter / plan.Columns.Diameter(column);
        return ratio * ratio;
    }

    private static JointPlan Joint(ObjectPlan plan, int number, BoxShape inner, BoxShape outer)
    {
        double lift = outer.PocketFloor - inner.HeightOfHalfWidth(outer.Well.Section.HalfX);
        return new JointPlan(number, plan.Spec.Nest!.Clearances[number - 1], plan.Widths!.Clearance(number))
        {
            Lift = lift,
            EngagedFrom = plan.PlinthTop + Math.Max(outer.BandBottom, inner.BandBottom + lift),
            EngagedTo = plan.PlinthTop + Math.Min(outer.BandTop, inner.BandTop + lift),
            Protrusion = inner.Rim + lift - outer.Rim,
        };
    }
}
