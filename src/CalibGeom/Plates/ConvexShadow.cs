using CalibGeom.Planar;

namespace CalibGeom.Plates;

/// <summary>
/// Replaces a shadow by its convex hull where that makes no difference: most coupons stand on a convex plinth, and a
/// hull of a few dozen triangles is searched much faster than thousands.
/// </summary>
internal static class ConvexShadow
{
    /// <summary>
    /// A hollow that holds no disc of the smallest gap (0.1 mm) can take no part, so it is enough to look this densely,
    /// mm.
    /// </summary>
    private const double Spacing = 0.14;
    private const double Inset = 1e-6;

    /// <summary>The hull as triangles (six numbers each), or null when the shadow does not fill it.</summary>
    internal static double[]? Of(PlanarTriangles shadow)
    {
        (double X, double Y)[] hull = ConvexHull.Of(Points(shadow.Triangles.ToArray()));
        return hull.Length >= 3 && Fills(shadow, hull) ? Fan(hull) : null;
    }

    /// <summary>The corners of triangles given by six numbers each.</summary>
    private static IEnumerable<(double X, double Y)> Points(double[] coordinates)
    {
        for (int i = 0; i < coordinates.Length; i += 2)
            yield return (coordinates[i], coordinates[i + 1]);
    }

    private static bool Fills(PlanarTriangles shadow, (double X, double Y)[] hull)
    {
        for (int i = 0, j = hull.Length - 1; i < hull.Length; j = i++)
        {
            int steps = 1 + (int)(double.Hypot(hull[i].X - hull[j].X, hull[i].Y - hull[j].Y) / Spacing);
            for (int k = 0; k < steps; k++)
                if (
                    !Covered(
                        shadow,
                        hull[j].X + (hull[i].X - hull[j].X) * k / steps,
                        hull[j].Y + (hull[i].Y - hull[j].Y) * k / steps
                    )
                )
                    return false;
        }
        for (double x = shadow.MinX; x <= shadow.MaxX; x += Spacing)
        for (double y = shadow.MinY; y <= shadow.MaxY; y += Spacing)
            if (Inside(hull, x, y) && !Covered(shadow, x, y))
                return false;
        return true;
    }

    private static bool Covered(PlanarTriangles shadow, double x, double y) => shadow.Distance(x, y, Inset) < Inset;

    private static bool Inside((double X, double Y)[] hull, double x, double y)
    {
        for (int i = 0, j = hull.Length - 1; i < hull.Length; j = i++)
            if (ConvexHull.Turn(hull[j], hull[i], (x, y)) < 0)
                return false;
        return true;
    }

    private static double[] Fan((double X, double Y)[] hull) =>
        Enumerable
            .Range(2, hull.Length - 2)
            .SelectMany(i => new[] { hull[0].X, hull[0].Y, hull[i - 1].X, hull[i - 1].Y, hull[i].X, hull[i].Y })
            .ToArray();
}
