using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>
/// Takes the micrometre-sized corners out that crossing strokes leave, so that a tilted label has no sliver.
/// </summary>
internal static class Smooth
{
    /// <summary>
    /// A corner that stands out less than this from the line of its neighbours goes, grid units (about 2 micrometres).
    /// </summary>
    private const int LeastCorner = 16;

    /// <summary>The region without its smallest corners.</summary>
    internal static Region Region(Region region) => new(Ring(region.Outer), region.Holes.Select(Ring));

    private static Outline Ring(Outline ring)
    {
        List<GridPoint> points = [.. ring.Points];
        while (points.Count > 3)
        {
            int least = Enumerable.Range(0, points.Count).MinBy(i => Height(points, i));
            if (Height(points, least) >= LeastCorner)
                break;
            points.RemoveAt(least);
        }
        return new Outline(points);
    }

    /// <summary>The smallest height of the triangle that a corner makes with its neighbours.</summary>
    private static double Height(List<GridPoint> points, int i)
    {
        GridPoint a = points[(i + points.Count - 1) % points.Count],
            b = points[i],
            c = points[(i + 1) % points.Count];
        return Math.Abs(Predicates.Cross(a, b, c))
            / Math.Sqrt(Math.Max(Square(a, b), Math.Max(Square(b, c), Square(a, c))));
    }

    private static double Square(GridPoint a, GridPoint b)
    {
        double dx = a.X - b.X,
            dy = a.Y - b.Y;
        return dx * dx + dy * dy;
    }
}
