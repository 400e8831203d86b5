using CalibGeom.Planar;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Finds whole contours (columns and holes) that are thin: they may slip between the lines that measure walls.
/// </summary>
internal static class SmallContours
{
    /// <summary>Visits contours whose least width is below a limit and whose extent is below three times it.</summary>
    internal static void Measure(LayerContours layer, double limit, Action<ThinSample> visit)
    {
        for (int i = 0; i < layer.Count; i++)
        {
            ReadOnlySpan<Vector2D> ring = layer[i];
            Vector2D min = ring[0],
                max = ring[0];
            foreach (Vector2D p in ring)
                (min, max) = (
                    new(Math.Min(min.X, p.X), Math.Min(min.Y, p.Y)),
                    new(Math.Max(max.X, p.X), Math.Max(max.Y, p.Y))
                );
            if (max.X - min.X > 3 * limit || max.Y - min.Y > 3 * limit)
                continue;
            double width = LeastWidth(ring);
            if (width > limit - 1e-6 || width < 0.001)
                continue;
            bool solid = Vector2D.SignedArea(ring) > 0;
            var middle = new Vector2D((min.X + max.X) / 2, (min.Y + max.Y) / 2);
            // Inside another shell a contour bounds nothing.
            if (Winding(layer, middle) == (solid ? 1 : 0))
                visit(new ThinSample(middle.X, middle.Y, width, solid, true));
        }
    }

    /// <summary>
    /// The least distance between two parallel lines that enclose the ring: one of them runs along an edge of its
    /// convex hull, and from edge to edge the corner opposite only goes on round it.
    /// </summary>
    private static double LeastWidth(ReadOnlySpan<Vector2D> ring)
    {
        var points = new (double X, double Y)[ring.Length];
        for (int i = 0; i < points.Length; i++)
            points[i] = (ring[i].X, ring[i].Y);
        (double X, double Y)[] hull = ConvexHull.Of(points);
        if (hull.Length < 3)
            return 0;
        double least = double.MaxValue;
        for (int i = 0, opposite = 1; i < hull.Length; i++)
        {
            (double X, double Y) from = hull[i],
                to = hull[(i + 1) % hull.Length];
            double Beside(int corner) => ConvexHull.Turn(from, to, hull[corner % hull.Length]);
            for (int steps = 0; steps < hull.Length && Beside(opposite + 1) >= Beside(opposite); steps++)
                opposite++;
            double length = Math.Sqrt((to.X - from.X) * (to.X - from.X) + (to.Y - from.Y) * (to.Y - from.Y));
            least = Math.Min(least, Beside(opposite) / length);
        }
        return least;
    }

    private static int Winding(LayerContours layer, Vector2D at)
    {
        int winding = 0;
        for (int i = 0; i < layer.Count; i++)
        {
            ReadOnlySpan<Vector2D> ring = layer[i];
            for (int k = 0, j = ring.Length - 1; k < ring.Length; j = k++)
                if (
                    ring[j].Y > at.Y != ring[k].Y > at.Y
                    && Vector2D.Cross(ring[k] - ring[j], at - ring[j]) > 0 == ring[k].Y > ring[j].Y
                )
                    winding += ring[k].Y > ring[j].Y ? 1 : -1;
        }
        return winding;
    }
}
