using CalibGeom.Light;
using CalibGeom.Meshes;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Slicing;

namespace CalibGeom.Pictures.Light;

/// <summary>A rectangle in space, parallel to two axes, with what light does in it.</summary>
/// <param name="Origin">Its lower left corner, mm.</param>
/// <param name="Right">The axis to the right, x or y.</param>
/// <param name="Up">The axis upward, y or z.</param>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
internal sealed record DosePanel(Vector3D Origin, Vector3D Right, Vector3D Up, double Width, double Height)
{
    private const double FineStep = 0.045;
    private const int LeastSteps = 150;
    private static readonly Pen Design = new(Ink.Plum, 1.4, 5),
        Border = new(Ink.Blue, 2.2);

    internal required string Title { get; init; }

    internal required string Horizontal { get; init; }

    internal required string Vertical { get; init; }

    internal void Draw(
        Drawing drawing,
        double x,
        double y,
        double width,
        double height,
        LightDose dose,
        TriangleMesh mesh
    )
    {
        double left = Vector3D.Dot(Origin, Right),
            low = Vector3D.Dot(Origin, Up);
        var plot = new PlotArea(
            drawing,
            x,
            y,
            width,
            height,
            new Axis(Horizontal, left, left + Width),
            new Axis(Vertical, low, low + Height)
        )
        {
            Title = Title,
        };
        foreach (
            IGrouping<float, (double, double, double, double)> shade in Lit(dose)
                .GroupBy(c => c.Coverage, c => (c.X0, c.Y0, c.X1, c.Y1))
        )
            plot.Area(shade.Select(Rectangle), Ink.Stone.WithOpacity(0.55 * shade.Key));
        foreach (SectionContour contour in mesh.CrossSection(Origin, Vector3D.Cross(Right, Up)).Contours)
            plot.Line(
                contour
                    .Points.ToArray()
                    .Append(contour.Points[0])
                    .Select(p => new Vector2D(Vector3D.Dot(p, Right), Vector3D.Dot(p, Up))),
                Design
            );
        double[] xs = Steady(left, Width),
            ys = Steady(low, Height);
        var field = new double[ys.Length, xs.Length];
        for (int r = 0; r < ys.Length; r++)
        for (int c = 0; c < xs.Length; c++)
            field[r, c] = dose.At(Origin + Right * (xs[c] - left) + Up * (ys[r] - low));
        plot.Contour(xs, ys, field, dose.Light.Curve.CriticalDose, Border);
        plot.Line([], Border, "solid");
        plot.Line([], Design, "design");
        plot.Area([], Ink.Stone.WithOpacity(0.55), name: "lit");
        plot.Finish();
    }

    /// <summary>Pixels, or layers of pixels, that are lit alike, as runs to the right.</summary>
    internal IEnumerable<(float Coverage, double X0, double Y0, double X1, double Y1)> Lit(LightDose dose)
    {
        MaskStack masks = dose.Masks;
        double left = Vector3D.Dot(Origin, Right),
            low = Vector3D.Dot(Origin, Up);
        double[] xs = Borders(left, Width, Right, masks),
            ys = Borders(low, Height, Up, masks);
        for (int r = 0; r + 1 < ys.Length; r++)
        for (int c = 0; c + 1 < xs.Length; )
        {
            float coverage = At(c, r);
            int start = c;
            while (c + 1 < xs.Length && At(c, r) == coverage)
                c++;
            if (coverage > 0)
                yield return (coverage, xs[start], ys[r], xs[c], ys[r + 1]);
        }

        float At(int c, int r) =>
            Coverage(masks, Origin + Right * ((xs[c] + xs[c + 1]) / 2 - left) + Up * ((ys[r] + ys[r + 1]) / 2 - low));
    }

    private static float Coverage(MaskStack masks, Vector3D p)
    {
        // A level panel lies on a film side, with its own layer below.
        int layer = (int)Math.Ceiling((p.Z - masks.BaseZ) / masks.LayerHeight - 1e-6) - 1;
        int x = (int)Math.Floor((p.X - masks.Grid.Origin.X) / masks.Grid.PitchX),
            y = (int)Math.Floor((p.Y - masks.Grid.Origin.Y) / masks.Grid.PitchY);
        if (layer < 0 || layer >= masks.Count || y < 0 || y >= masks.Grid.Height)
            return 0;
        foreach (CoverageSpan span in masks[layer].Row(y))
            if (span.Start <= x && x < span.End)
                return span.Coverage;
        return 0;
    }

    private static double[] Borders(double from, double length, Vector3D axis, MaskStack masks)
    {
        (double origin, double pitch) =
            axis.Z != 0 ? (masks.BaseZ, masks.LayerHeight)
            : axis.X != 0 ? (masks.Grid.Origin.X, masks.Grid.PitchX)
            : (masks.Grid.Origin.Y, masks.Grid.PitchY);
        int first = (int)Math.Floor((from - origin) / pitch),
            last = (int)Math.Ceiling((from + length - origin) / pitch);
        return [.. Enumerable.Range(first, last - first + 1).Select(i => origin + i * pitch)];
    }

    private static double[] Steady(double from, double length) =>
        [.. Enumerable.Range(0, Steps(length) + 1).Select(i => from + length * i / Steps(length))];

    private static int Steps(double length) => Math.Max(LeastSteps, (int)(length / FineStep));

    private static Vector2D[] Rectangle((double X0, double Y0, double X1, double Y1) r) =>
        [(r.X0, r.Y0), (r.X1, r.Y0), (r.X1, r.Y1), (r.X0, r.Y1)];
}
