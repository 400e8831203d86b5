using CalibGeom.Meshes;
using CalibGeom.TestObjects;

namespace CalibGeom.Inspection;

/// <summary>
/// Holds a mesh against the object that a spec describes, wherever it was moved to: the widths of boxes and pockets on a section through each
/// gauge band, the diameters of columns, and the outer size. Immutable and safe to share between threads.
/// </summary>
public sealed class SpecComparison
{
    /// <summary>The largest difference, mm, that is no finding: 0.003.</summary>
    public const double Tolerance = 0.003;

    private readonly TriangleMesh mesh;
    private readonly TestObject made;
    private readonly Vector3D shift;
    private readonly List<Finding> findings = [];

    private SpecComparison(TriangleMesh mesh, TestObject made)
    {
        this.mesh = mesh;
        this.made = made;
        Box3D expected = made.ToMesh().Bounds;
        shift = mesh.Bounds.Min - expected.Min;
        Require("size.x", expected.Size.X, mesh.Bounds.Size.X);
        Require("size.y", expected.Size.Y, mesh.Bounds.Size.Y);
        Require("size.z", expected.Size.Z, mesh.Bounds.Size.Z);
    }

    /// <summary>Findings for every size that differs or is missing; none when the mesh has the spec's sizes. Of a tilted object only the
    /// outer size is compared, and a note says so.</summary>
    /// <param name="mesh">A mesh with triangles, not turned.</param>
    /// <param name="made">The object that it should be.</param>
    /// <exception cref="InvalidOperationException">The object has no solid.</exception>
    public static IReadOnlyList<Finding> Check(TriangleMesh mesh, TestObject made)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(made);
        if (mesh.TriangleCount == 0) return [new Finding("spec-size", Severity.Error, "", "The mesh is empty.", "")];
        var comparison = new SpecComparison(mesh, made);
        if (made.Spec.Tilt.Angle != 0)
        {
            comparison.findings.Add(new Finding("spec-tilted", Severity.Note, "", "The object is tilted: only its outer size was compared.", ""));
            return comparison.findings;
        }
        foreach (BoxPlan box in made.Boxes) comparison.CompareBox(box);
        foreach (ColumnPlan column in made.Columns) comparison.CompareColumn(column);
        return comparison.findings;
    }

    /// <summary>Tells which box or column of an object a place of its mesh belongs to (<c>box2</c>, <c>column7</c>); empty when none, or when the
    /// object is tilted.</summary>
    /// <param name="mesh">The object's mesh with triangles, wherever it was moved to.</param>
    /// <param name="made">The object.</param>
    /// <exception cref="InvalidOperationException">The object has no solid.</exception>
    public static Func<Vector3D, string> Names(TriangleMesh mesh, TestObject made)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(made);
        Vector3D shift = mesh.Bounds.Min - made.ToMesh().Bounds.Min;
        if (made.Spec.Tilt.Angle != 0) return _ => "";
        return place =>
        {
            Vector3D p = place - shift;
            BoxPlan? box = made.Boxes.FirstOrDefault(b => Math.Abs(p.X - b.X) <= b.Outside.X / 2 + 0.01 && Math.Abs(p.Y - b.Y) <= b.Outside.Y / 2 + 0.01);
            if (box is not null) return $"box{box.Number}";
            double reach = made.Spec.Columns is { } columns ? columns.HeadDiameter / 2 + 0.01 : 0;
            ColumnPlan? column = made.Columns.FirstOrDefault(c => Math.Abs(p.X - c.X) <= reach && Math.Abs(p.Y - c.Y) <= reach);
            return column is null ? "" : $"column{column.Number}";
        };
    }

    private void CompareBox(BoxPlan box)
    {
        double z = (Math.Max(box.BandBottom, box.PocketFloor) + box.BandTop) / 2;
        CrossSection section = mesh.CrossSection(z + shift.Z);
        CompareAxis(box, "x", Along(section, box.Y + shift.Y, false), box.X + shift.X, box.Outside.X, box.Inside.X);
        CompareAxis(box, "y", Along(section, box.X + shift.X, true), box.Y + shift.Y, box.Outside.Y, box.Inside.Y);
    }

    /// <summary>A line through the middle of a box passes wall, pocket, wall.</summary>
    private void CompareAxis(BoxPlan box, string axis, List<double> cuts, double middle, double outside, double inside)
    {
        int right = cuts.FindIndex(c => c > middle);
        bool pocket = inside > 0;
        int reach = pocket ? 2 : 1;
        if (right < reach || right + reach > cuts.Count)
        {
            Missing($"box{box.Number}.outside.{axis}", outside);
            return;
        }
        Require($"box{box.Number}.outside.{axis}", outside, cuts[right + reach - 1] - cuts[right - reach]);
        if (pocket) Require($"box{box.Number}.inside.{axis}", inside, cuts[right] - cuts[right - 1]);
    }

    private void CompareColumn(ColumnPlan column)
    {
        double z = made.Spec.Plinth.Thickness + made.Spec.Columns!.Height / 2;
        double reach = column.Diameter / 2 + 0.2;
        SectionContour? contour = mesh.CrossSection(z + shift.Z).Contours.FirstOrDefault(c => c.PlanePoints.ToArray().All(p =>
            Math.Abs(p.X - shift.X - column.X) < reach && Math.Abs(p.Y - shift.Y - column.Y) < reach));
        if (contour is null) Missing($"column{column.Number}.diameter", column.Diameter);
        else Require($"column{column.Number}.diameter", column.Diameter, 2 * Math.Sqrt(Math.Max(0, contour.SignedArea) / Math.PI));
    }

    private static List<double> Along(CrossSection section, double line, bool alongY)
    {
        var cuts = new List<double>();
        foreach (SectionContour contour in section.Contours)
        {
            ReadOnlySpan<Vector2D> ring = contour.PlanePoints;
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                (double a, double atA, double b, double atB) = alongY ? (ring[j].X, ring[j].Y, ring[i].X, ring[i].Y) : (ring[j].Y, ring[j].X, ring[i].Y, ring[i].X);
                if (a > line != b > line) cuts.Add(atA + (line - a) / (b - a) * (atB - atA));
            }
        }
        cuts.Sort();
        return cuts;
    }

    private void Require(string feature, double expected, double found)
    {
        if (Math.Abs(found - expected) <= Tolerance) return;
        findings.Add(new Finding("spec-size", Severity.Error, feature,
            FormattableString.Invariant($"The mesh has {found:0.0000} mm where the spec gives {expected:0.0000} mm."),
            "Make the mesh again from the spec, or compare with the spec it was made from.") { Value = found, Limit = expected, Unit = "mm" });
    }

    private void Missing(string feature, double expected) => findings.Add(new Finding("spec-size", Severity.Error, feature,
        FormattableString.Invariant($"The mesh has nothing where the spec gives {expected:0.0000} mm."), "Make the mesh again from the spec."));
}
