using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.Spans;

/// <summary>
/// A pair of posts whose far faces are a span apart, in its own frame: the middle between them at the origin.
/// </summary>
/// <param name="Length">From outside to outside, mm.</param>
/// <param name="AlongY">Whether the span is measured along Y.</param>
internal sealed record SpanPosts(double Length, bool AlongY)
{
    /// <summary>The two posts, seen from above.</summary>
    internal Rect[] Posts =>
        [
            Turn(-Length / 2, -Length / 2 + Proportions.PostThickness, Proportions.PostWidth / 2),
            Turn(Length / 2 - Proportions.PostThickness, Length / 2, Proportions.PostWidth / 2),
        ];

    /// <summary>The two lanes that caliper jaws need.</summary>
    internal Rect[] Lanes =>
        [
            Turn(-Length / 2 - Proportions.JawDepth, -Length / 2, Proportions.JawWidth / 2),
            Turn(Length / 2, Length / 2 + Proportions.JawDepth, Proportions.JawWidth / 2),
        ];

    internal IEnumerable<Loft> Lofts(double x, double y, double baseZ) =>
        Posts.Select(p => Loft.Prism(Chamfered(p.Move(x, y)), baseZ, Grid.Snap(baseZ + Proportions.PostHeight)));

    private static Outline Chamfered(Rect r)
    {
        const double C = Proportions.PostChamfer;
        return Outline.FromMillimetres(
            (r.X0 + C, r.Y0),
            (r.X1 - C, r.Y0),
            (r.X1, r.Y0 + C),
            (r.X1, r.Y1 - C),
            (r.X1 - C, r.Y1),
            (r.X0 + C, r.Y1),
            (r.X0, r.Y1 - C),
            (r.X0, r.Y0 + C)
        );
    }

    private Rect Turn(double s0, double s1, double halfWidth) =>
        AlongY ? new(-halfWidth, s0, halfWidth, s1) : new(s0, -halfWidth, s1, halfWidth);
}
