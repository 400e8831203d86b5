using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.Columns;

/// <summary>
/// One column with flared root, shaft and head, in its own frame: the root's centre at the origin, z = 0 on the plinth.
/// </summary>
internal sealed class ColumnShape
{
    private readonly ColumnsSpec spec;
    private readonly double diameter;
    private readonly double cosLean;
    private readonly double driftX;
    private readonly double driftY;
    private readonly int segments;

    internal ColumnShape(ColumnsSpec spec, double diameter)
    {
        this.spec = spec;
        this.diameter = diameter;
        cosLean = Math.Cos(spec.Lean * Math.PI / 180);
        double azimuth = spec.Azimuth * Math.PI / 180,
            drift = Math.Tan(spec.Lean * Math.PI / 180);
        (driftX, driftY) = (drift * Math.Cos(azimuth), drift * Math.Sin(azimuth));
        segments = Outline.CircleSegments(Math.Max(diameter + 2 * Proportions.ColumnFlare, spec.HeadDiameter));
    }

    /// <summary>Whether a head stands on the shaft: not when it would be hardly wider than the column.</summary>
    internal bool HasHead => spec.HeadDiameter - diameter > 0.05;

    /// <summary>Top of the flared root, mm.</summary>
    internal double FlareTop => Math.Min(Proportions.ColumnFlareHeight, spec.Height / 4);

    /// <summary>Height of the column with its head, mm.</summary>
    internal double Top => spec.Height + (HasHead ? (spec.HeadDiameter - diameter) / 2 + Proportions.HeadThickness : 0);

    /// <summary>
    /// How far the shaft's axis has moved sideways at a height, mm; the head stands upright over the shaft's end.
    /// </summary>
    internal (double X, double Y) Drift(double z) =>
        (driftX * Math.Min(z, spec.Height), driftY * Math.Min(z, spec.Height));

    /// <summary>Half the extent of the whole column along X and Y at its widest section, mm.</summary>
    internal double HalfExtent =>
        Math.Max(HasHead ? spec.HeadDiameter / 2 : 0, (diameter / 2 + Proportions.ColumnFlare) / cosLean) + 0.01;

    /// <summary>
    /// The section at a level: an ellipse, long along the lean, whose cut square to the axis is a circle of equal area.
    /// </summary>
    internal Outline Section(GridPoint centre, double across)
    {
        double step = 2 * Math.PI / segments,
            radius = across / 2 * Math.Sqrt(step / Math.Sin(step));
        double azimuth = spec.Lean == 0 ? 0 : spec.Azimuth * Math.PI / 180;
        (double sin, double cos) = Math.SinCos(azimuth);
        return new Outline(
            Enumerable
                .Range(0, segments)
                .Select(i =>
                {
                    (double v, double u) = Math.SinCos((i + 0.5) * step);
                    (u, v) = (radius * u / cosLean, radius * v);
                    return centre.Offset(
                        Grid.FromMillimetres(u * cos - v * sin),
                        Grid.FromMillimetres(u * sin + v * cos)
                    );
                })
        );
    }

    internal IEnumerable<Loft> Lofts(GridPoint root, double baseZ)
    {
        double flareTop = Grid.Snap(baseZ + FlareTop),
            shaftTop = Grid.Snap(baseZ + spec.Height);
        Outline shaft = Section(root, diameter);
        (double flareX, double flareY) = Drift(FlareTop);
        (double topX, double topY) = Drift(spec.Height);
        Outline lower = shaft.Translate(flareX, flareY),
            upper = shaft.Translate(topX, topY);
        yield return new Loft(Section(root, diameter + 2 * Proportions.ColumnFlare), baseZ, lower, flareTop);
        yield return new Loft(lower, flareTop, upper, shaftTop);
        if (!HasHead)
            yield break;
        double headBottom = Grid.Snap(shaftTop + (spec.HeadDiameter - diameter) / 2);
        Outline head = Head(root.Offset(Grid.FromMillimetres(topX), Grid.FromMillimetres(topY)));
        yield return new Loft(upper, shaftTop, head, headBottom);
        yield return Loft.Prism(head, headBottom, headBottom + Proportions.HeadThickness);
    }

    private Outline Head(GridPoint centre)
    {
        double step = 2 * Math.PI / segments,
            radius = spec.HeadDiameter / 2 * Math.Sqrt(step / Math.Sin(step));
        double turn = spec.Lean == 0 ? 0 : spec.Azimuth * Math.PI / 180;
        return new Outline(
            Enumerable
                .Range(0, segments)
                .Select(i =>
                    centre.Offset(
                        Grid.FromMillimetres(radius * Math.Cos((i + 0.5) * step + turn)),
                        Grid.FromMillimetres(radius * Math.Sin((i + 0.5) * step + turn))
                    )
                )
        );
    }
}
