using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>What layers make of every height.</summary>
internal sealed class LayerRule : IDesignRule
{
    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (plan.Spec.Process is not { LayerHeight: var layer })
            yield break;
        if (plan.Layout.Pad is not null)
            yield return Height("plinth.thickness", plan.Spec.Plinth.Thickness, layer);
        foreach (BoxPlan box in PlanRecords.Boxes(plan))
            yield return Height($"box{box.Number}.height", box.Height, layer);
        if (plan.Spec.Slots is { } slots)
        {
            string counts = string.Join(
                ", ",
                slots.Heights.Select(h => FormattableString.Invariant($"{h:0.###} mm is {PixelCount.Of(h, layer)}"))
            );
            yield return Judge.Note("layers", "slots.heights", $"In layers, {counts}.");
            foreach (Finding finding in TooLow("slots.heights", "The lowest tunnel", slots.Heights.Min(), layer))
                yield return finding;
        }
        if (plan.Tab is null)
            yield break;
        yield return Height("squeeze.slotHeight", plan.Spec.Squeeze!.SlotHeight, layer);
        foreach (
            Finding finding in TooLow(
                "squeeze.slotHeight",
                "A slot of the squeeze tab",
                plan.Spec.Squeeze.SlotHeight,
                layer
            )
        )
            yield return finding;
        foreach (Finding finding in TooLow("squeeze.pitch", "A bar of the squeeze tab", plan.Tab.Web, layer))
            yield return finding;
    }

    private static Finding Height(string subject, double height, double layer)
    {
        PixelCount count = PixelCount.Of(height, layer);
        string real = count.IsWhole
            ? ""
            : FormattableString.Invariant(
                $", which give {count.Fewest * layer:0.####} or {count.Most * layer:0.####} mm"
            );
        return Judge.Note(
            "layers",
            subject,
            FormattableString.Invariant($"{height:0.####} mm is {count} layers{real}."),
            height / layer,
            null,
            "layers"
        );
    }

    private static IEnumerable<Finding> TooLow(string subject, string what, double height, double layer) =>
        Judge.AtLeast(
            "lower-than-a-layer",
            subject,
            what,
            height / layer,
            0,
            1,
            "layers",
            "Make it at least one layer high, or print thinner layers."
        );
}
