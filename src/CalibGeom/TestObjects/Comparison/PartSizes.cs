using CalibGeom.Slicing;
using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>Spans half way up their posts; plinth, tunnels and slots on upright lines through them.</summary>
internal static class PartSizes
{
    // A face further than this from its place is taken for another one.
    private const double Reach = 1.0;

    internal static void Check(SectionLines lines, TestObject made, SizeFindings findings)
    {
        ObjectPlan plan = made.Plan;
        if (plan.Span is { } span)
        {
            double z = plan.PlinthTop + Proportions.PostHeight / 2;
            Placement x = plan.Find("span.x")!,
                y = plan.Find("span.y")!;
            Span("span.x", lines.AlongX(x.Y, z), x.X, span.X, findings);
            Span("span.y", lines.AlongY(y.X, z), y.Y, span.Y, findings);
        }
        if (plan.Layout.Pad is { } pad)
            Plinth(lines, pad, made.Spec.Plinth.Thickness, findings);
        if (plan.Comb is { } comb)
            Tunnels(lines, plan.Find("slots")!, comb, made.Spec.Slots!, findings);
        if (plan.Tab is not null)
            Slots(lines, plan.Layout.Tab!.Value, made.Spec.Squeeze!, findings);
    }

    /// <summary>From outside to outside, whatever stands between the posts.</summary>
    private static void Span(string feature, double[] cuts, double middle, double length, SizeFindings findings)
    {
        double? left = Nearest(cuts, middle - length / 2),
            right = Nearest(cuts, middle + length / 2);
        if (left is { } from && right is { } to)
            findings.Require(feature, length, to - from);
        else
            findings.Missing(feature, length);
    }

    private static double? Nearest(double[] cuts, double place)
    {
        double? nearest = cuts.Length == 0 ? null : cuts.MinBy(c => Math.Abs(c - place));
        return nearest is { } found && Math.Abs(found - place) < Reach ? found : null;
    }

    private static void Plinth(SectionLines lines, Edge pad, double thickness, SizeFindings findings)
    {
        Rect spot = pad.Rectangle(0, 0, -Proportions.PadDepth / 2, -Proportions.PadDepth / 2);
        double[] cuts = lines.AlongZ(spot.X0, spot.Y0);
        if (cuts.Length == 2)
            findings.Require("plinth.thickness", thickness, cuts[1] - cuts[0]);
        else
            findings.Missing("plinth.thickness", thickness);
    }

    /// <summary>A line through the middle of an open tunnel passes what is below it and its roof.</summary>
    private static void Tunnels(
        SectionLines lines,
        Placement place,
        SlotComb comb,
        SlotsSpec spec,
        SizeFindings findings
    )
    {
        int open = 0;
        for (int i = 0; i < spec.Heights.Count; i++)
        {
            double along = comb.MiddleOf(i);
            double[] cuts =
                place.Form.Form == 1 ? lines.AlongZ(place.X, place.Y + along) : lines.AlongZ(place.X + along, place.Y);
            if (cuts.Length == 4)
            {
                open++;
                findings.Require($"slot{i + 1}.height", spec.Heights[i], cuts[2] - cuts[1]);
            }
            else
                findings.Missing($"slot{i + 1}.height", spec.Heights[i]);
        }
        findings.RequireCount("slots.open", spec.Heights.Count, open);
    }

    /// <summary>A line up through the tab passes a bar below every slot and the cap above the last.</summary>
    private static void Slots(SectionLines lines, Edge edge, SqueezeSpec spec, SizeFindings findings)
    {
        double middle = Proportions.TabGap + Proportions.TabDepth / 2;
        Rect spot = edge.Rectangle(0, 0, middle, middle);
        double[] cuts = lines.AlongZ(spot.X0, spot.Y0);
        int open = Math.Max(0, cuts.Length / 2 - 1);
        findings.RequireCount("squeeze.open", spec.Slots, open);
        double[] heights = [.. Enumerable.Range(0, open).Select(i => cuts[2 * i + 2] - cuts[2 * i + 1])];
        if (heights.Length > 0)
            findings.Require("squeeze.height", spec.SlotHeight, heights.MaxBy(h => Math.Abs(h - spec.SlotHeight)));
        else
            findings.Missing("squeeze.height", spec.SlotHeight);
    }
}
