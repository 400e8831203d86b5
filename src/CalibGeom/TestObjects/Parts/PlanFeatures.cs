using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>The feature table of a plan: sizes as they are made, in a fixed order.</summary>
internal static class PlanFeatures
{
    internal static FeatureTable Of(ObjectPlan plan) =>
        new(
            [.. Boxes(plan), .. Joints(plan), .. Spans(plan.Span), .. Plinth(plan), .. Columns(plan), .. Counts(plan)],
            SpecDigest.Of(plan.Spec)
        );

    private static IEnumerable<Feature> Boxes(ObjectPlan plan)
    {
        foreach (BoxPlan box in PlanRecords.Boxes(plan))
        {
            string when = box.Attached ? "while it stands on the plinth" : "after breaking the box off";
            string band = FormattableString.Invariant(
                $"{box.Rim - box.BandTop:0.#} to {box.Rim - box.BandBottom:0.#} mm below the rim"
            );
            yield return Size(
                $"box{box.Number}.outside.x",
                box.Outside.X,
                "x",
                $"outside jaws, middle of the faces, {band}, {when}"
            );
            yield return Size(
                $"box{box.Number}.outside.y",
                box.Outside.Y,
                "y",
                $"outside jaws, middle of the faces, {band}, {when}"
            );
            yield return Size(
                $"box{box.Number}.inside.x",
                box.Inside.X,
                "x",
                $"inside jaws, middle of the faces, {band}, {when}"
            );
            yield return Size(
                $"box{box.Number}.inside.y",
                box.Inside.Y,
                "y",
                $"inside jaws, middle of the faces, {band}, {when}"
            );
            yield return Size(
                $"box{box.Number}.height",
                box.Height,
                "z",
                "depth rod from the rim to the plinth, before breaking any box off"
            );
        }
    }

    private static IEnumerable<Feature> Joints(ObjectPlan plan) =>
        PlanRecords
            .Joints(plan)
            .Select(joint => new Feature(
                $"joint{joint.Number}.fit",
                Tidy(joint.Tighter),
                "fit",
                joint.Clearance.IsUniform ? ""
                    : joint.Clearance.X < joint.Clearance.Y ? "x"
                    : "y",
                $"put box {joint.Number} into box {joint.Number + 1}, cut corners together, and feel: refuses, "
                    + $"binds, slides or rattles"
            ));

    private static IEnumerable<Feature> Spans(PerAxis? spans)
    {
        if (spans is not { } span)
            yield break;
        yield return Size(
            "span.x",
            span.X,
            "x",
            "outside jaws over the far faces of the two posts along X, 3 mm above the plinth"
        );
        yield return Size(
            "span.y",
            span.Y,
            "y",
            "outside jaws over the far faces of the two posts along Y, 3 mm above the plinth"
        );
    }

    private static IEnumerable<Feature> Plinth(ObjectPlan plan)
    {
        if (plan.Layout.Pad is { } pad)
            yield return Size(
                "plinth.thickness",
                plan.Spec.Plinth.Thickness,
                "z",
                $"outside jaws over the flat pad, the place without chamfer at the "
                    + $"{pad.Side.ToString().ToLowerInvariant()} edge"
            );
    }

    private static IEnumerable<Feature> Columns(ObjectPlan plan)
    {
        IReadOnlyList<ColumnPlan> columns = PlanRecords.Columns(plan);
        foreach (ColumnPlan column in columns)
            yield return Size(
                $"column{column.Number}.diameter",
                column.Diameter,
                "",
                $"outside jaws or microscope, half way up, {Where(column)}"
            ) with
            {
                HeadDiameter = plan.Columns!.Part(column.Number - 1).HasHead ? plan.Spec.Columns!.HeadDiameter : null,
            };
        foreach (ColumnPlan column in columns)
            yield return new Feature(
                $"column{column.Number}.stood",
                3,
                "stage",
                "",
                $"the last stage at which it stood whole: lost, plate, wash or cure; {Where(column)}"
            );
    }

    private static string Where(ColumnPlan column) =>
        FormattableString.Invariant(
            $"row {column.Row} from the front, place {column.Place} from the left ({column.Diameter} mm)"
        );

    private static IEnumerable<Feature> Counts(ObjectPlan plan)
    {
        if (plan.Spec.Slots is { } slots)
        {
            yield return new Feature(
                "slots.open",
                slots.Heights.Count,
                "count",
                "",
                "hold against light and count the tunnels that are open right through"
            );
            string from = plan.Find("slots")!.Form.Form == 1 ? "front" : "left";
            for (int i = 0; i < slots.Heights.Count; i++)
                yield return Size(
                    $"slot{i + 1}.height",
                    slots.Heights[i],
                    "z",
                    $"feeler gauge, tunnel {i + 1} of the comb from the {from}"
                );
        }
        if (plan.Tab is null)
            yield break;
        yield return new Feature(
            "squeeze.open",
            plan.Spec.Squeeze!.Slots,
            "count",
            "",
            "hold against light and count the slots of the tab that are open right through"
        );
        yield return Size("squeeze.height", plan.Spec.Squeeze.SlotHeight, "z", "feeler gauge, any slot of the tab");
    }

    private static Feature Size(string id, double nominal, string axis, string how) =>
        new(id, Tidy(nominal), "mm", axis, how);

    /// <summary>Takes off what sums in binary leave behind: 11.299999999999999 is 11.3.</summary>
    private static double Tidy(double length) => Math.Round(length, 9);
}
