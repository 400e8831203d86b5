using CalibGeom.Meshes;
using CalibGeom.Slicing;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>The diameter of each column from the area of its section half way up.</summary>
internal static class ColumnSizes
{
    internal static void Check(SectionLines lines, TestObject made, SizeFindings findings)
    {
        if (made.Spec.Columns is not { } spec)
            return;
        foreach (ColumnPlan column in made.Columns)
        {
            ColumnPart part = made.Plan.Columns!.Part(column.Number - 1);
            (double driftX, double driftY) = part.Drift(spec.Height / 2);
            double? area = AreaAt(
                lines.Level(made.Plan.PlinthTop + spec.Height / 2),
                column.X + driftX,
                column.Y + driftY,
                0.4 * spec.Pitch
            );
            // The level section of a leaning column is an ellipse, longer than the circle by 1 / cos(lean).
            if (area is { } found)
                findings.Require(
                    $"column{column.Number}.diameter",
                    column.Diameter,
                    2 * Math.Sqrt(found * Math.Cos(spec.Lean * Math.PI / 180) / Math.PI)
                );
            else
                findings.Missing($"column{column.Number}.diameter", column.Diameter);
        }
    }

    /// <summary>The area within the nearest contour whose middle is no further away than a reach.</summary>
    private static double? AreaAt(CrossSection section, double x, double y, double reach)
    {
        (double? area, double nearest) = (null, reach);
        foreach (SectionContour contour in section.Contours)
        {
            Vector2D middle = Middle(contour.PlanePoints);
            double away = Math.Sqrt((middle.X - x) * (middle.X - x) + (middle.Y - y) * (middle.Y - y));
            if (contour.SignedArea > 0 && away < nearest)
                (area, nearest) = (contour.SignedArea, away);
        }
        return area;
    }

    private static Vector2D Middle(ReadOnlySpan<Vector2D> ring)
    {
        (Vector2D min, Vector2D max) = (ring[0], ring[0]);
        foreach (Vector2D p in ring)
            (min, max) = (
                new(Math.Min(min.X, p.X), Math.Min(min.Y, p.Y)),
                new(Math.Max(max.X, p.X), Math.Max(max.Y, p.Y))
            );
        return new((min.X + max.X) / 2, (min.Y + max.Y) / 2);
    }
}
