using CalibGeom.Slicing;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>
/// Boxes and pockets on a section through the middle of each gauge band, and heights on an upright section through a
/// wall.
/// </summary>
internal static class BoxSizes
{
    internal static void Check(SectionLines lines, TestObject made, SizeFindings findings)
    {
        foreach (BoxPlan box in made.Boxes)
        {
            double z = (Math.Max(box.BandBottom, box.PocketFloor) + box.BandTop) / 2;
            Widths($"box{box.Number}", "x", lines.AlongX(box.Y, z), box.X, box.Outside.X, box.Inside.X, findings);
            Widths($"box{box.Number}", "y", lines.AlongY(box.X, z), box.Y, box.Outside.Y, box.Inside.Y, findings);
            Height(lines, box, findings);
        }
    }

    /// <summary>A line through the middle of a box passes wall, pocket, wall.</summary>
    private static void Widths(
        string box,
        string axis,
        double[] cuts,
        double middle,
        double outside,
        double inside,
        SizeFindings findings
    )
    {
        int right = Array.FindIndex(cuts, c => c > middle);
        if (right < 2 || right + 2 > cuts.Length)
        {
            findings.Missing($"{box}.outside.{axis}", outside);
            return;
        }
        findings.Require($"{box}.outside.{axis}", outside, cuts[right + 1] - cuts[right - 2]);
        findings.Require($"{box}.inside.{axis}", inside, cuts[right] - cuts[right - 1]);
    }

    /// <summary>A line down through a wall, outside of the lead-in, passes the box and the plinth below it.</summary>
    private static void Height(SectionLines lines, BoxPlan box, SizeFindings findings)
    {
        double inset = Math.Min(0.1, (box.Outside.X - box.Inside.X) / 8);
        double[] cuts = lines.AlongZ(box.X + box.Outside.X / 2 - inset, box.Y);
        if (cuts.Length == 4)
            findings.Require($"box{box.Number}.height", box.Height, cuts[3] - cuts[1]);
        else
            findings.Missing($"box{box.Number}.height", box.Height);
    }
}
