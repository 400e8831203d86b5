using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// What pixels make of every width: both counts where the place in the pixel is not known, and the clearances that
/// follow.
/// </summary>
internal sealed class PixelRule : IDesignRule
{
    private const double LeastPixels = 2,
        GoodPixels = 3;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (plan.Spec.Process is not { PixelPitch: var pitch })
            return [];
        return
        [
            .. PlanRecords.Boxes(plan).SelectMany(b => Widths(b, pitch)),
            .. PlanRecords.Joints(plan).SelectMany(j => Clearances(plan, j, pitch)),
            .. Spans(plan, pitch),
            .. Columns(plan.Spec.Columns, pitch),
        ];
    }

    private static IEnumerable<Finding> Widths(BoxPlan box, PerAxis pitch)
    {
        yield return Width($"box{box.Number}.outside.x", box.Outside.X, box.WantedOutside, pitch.X);
        yield return Width($"box{box.Number}.outside.y", box.Outside.Y, box.WantedOutside, pitch.Y);
        yield return Width($"box{box.Number}.inside.x", box.Inside.X, null, pitch.X);
        yield return Width($"box{box.Number}.inside.y", box.Inside.Y, null, pitch.Y);
    }

    private static Finding Width(string subject, double made, double? wanted, double pitch)
    {
        PixelCount count = PixelCount.Of(made, pitch);
        string asWanted =
            wanted is { } w && Math.Abs(w - made) > 1e-9 ? FormattableString.Invariant($" ({w:0.####} mm wanted)") : "";
        string real = count.IsWhole
            ? ""
            : FormattableString.Invariant(
                $", which give {count.Fewest * pitch:0.####} or {count.Most * pitch:0.####} mm"
            );
        return Judge.Note(
            "pixels",
            subject,
            FormattableString.Invariant($"{made:0.####} mm{asWanted} is {count} pixels{real}."),
            made / pitch,
            null,
            "pixels"
        );
    }

    private static IEnumerable<Finding> Clearances(ObjectPlan plan, JointPlan joint, PerAxis pitch)
    {
        BoxShape inner = plan.Boxes[joint.Number - 1],
            outer = plan.Boxes[joint.Number];
        return
        [
            .. Clearance(joint, "x", inner.Frame.Outside.X, outer.Frame.Inside.X, joint.WantedClearance.X, pitch.X),
            .. Clearance(joint, "y", inner.Frame.Outside.Y, outer.Frame.Inside.Y, joint.WantedClearance.Y, pitch.Y),
        ];
    }

    private static IEnumerable<Finding> Clearance(
        JointPlan joint,
        string axis,
        double outside,
        double inside,
        double wanted,
        double pitch
    )
    {
        PixelCount o = PixelCount.Of(outside, pitch),
            i = PixelCount.Of(inside, pitch);
        double least = (i.Fewest - o.Most) * pitch / 2,
            most = (i.Most - o.Fewest) * pitch / 2;
        string subject = $"joint{joint.Number}.fit",
            range = least == most
                ? FormattableString.Invariant($"{least:0.####} mm")
                : FormattableString.Invariant($"{least:0.####} to {most:0.####} mm");
        yield return Judge.Note(
            "pixel-clearance",
            subject,
            FormattableString.Invariant(
                $"The clearance along {axis} becomes {range} on these pixels ({wanted:0.####} mm wanted)."
            ),
            least,
            most,
            "mm"
        );
        if (Math.Sign(wanted) * (wanted > 0 ? least : most) <= 0 && wanted != 0)
            yield return Judge.Finding(
                "clearance-lost-to-pixels",
                Severity.Warning,
                subject,
                $"The clearance along {axis} that the pixels leave in the worst case",
                wanted > 0 ? least : most,
                wanted,
                "mm",
                "Choose a clearance of at least a pixel, or let process.snap move widths onto pixels."
            );
    }

    private static IEnumerable<Finding> Spans(ObjectPlan plan, PerAxis pitch) =>
        plan is not { Span: { } made, Spec.Spans: { } wanted }
            ? []
            : [Width("span.x", made.X, wanted.X, pitch.X), Width("span.y", made.Y, wanted.Y, pitch.Y)];

    private static IEnumerable<Finding> Columns(ColumnsSpec? columns, PerAxis pitch)
    {
        if (columns is null)
            return [];
        double coarser = Math.Max(pitch.X, pitch.Y);
        string counts = string.Join(
            ", ",
            columns.Diameters.Select(d => FormattableString.Invariant($"{d:0.###} mm is {PixelCount.Of(d, coarser)}"))
        );
        return
        [
            Judge.Note("pixels", "columns.diameters", $"In pixels, {counts}."),
            .. Judge.AtLeast(
                "column-pixels",
                "columns.diameters",
                "The thinnest column",
                columns.Diameters.Min() / coarser,
                LeastPixels,
                GoodPixels,
                "pixels",
                "Start with a thicker column: fewer pixels do not make a round section."
            ),
        ];
    }
}
