namespace CalibGeom.Planar;

/// <summary>The checks behind <see cref="Region"/>.</summary>
internal static class RegionCheck
{
    internal static void Validate(Outline outer, Outline[] holes)
    {
        for (int i = 0; i < holes.Length; i++)
        {
            if (Touch(outer, holes[i]))
                throw new ArgumentException(
                    $"Hole {i} touches or crosses the outer border near {holes[i].Points[0]} mm.",
                    nameof(holes)
                );
            if (outer.Locate(holes[i].Points[0]) < 0)
                throw new ArgumentException(
                    $"Hole {i} lies outside the outer border, at {holes[i].Points[0]} mm.",
                    nameof(holes)
                );
            for (int j = 0; j < i; j++)
                if (
                    Touch(holes[i], holes[j])
                    || holes[i].Locate(holes[j].Points[0]) > 0
                    || holes[j].Locate(holes[i].Points[0]) > 0
                )
                    throw new ArgumentException(
                        $"Holes {j} and {i} touch or overlap near {holes[i].Points[0]} mm.",
                        nameof(holes)
                    );
        }
    }

    private static bool Touch(Outline a, Outline b)
    {
        ReadOnlySpan<GridPoint> p = a.Points,
            q = b.Points;
        for (int i = 0, j = p.Length - 1; i < p.Length; j = i++)
        for (int k = 0, l = q.Length - 1; k < q.Length; l = k++)
            if (BoxesTouch(p[j], p[i], q[l], q[k]) && Predicates.SegmentsTouch(p[j], p[i], q[l], q[k]))
                return true;
        return false;
    }

    private static bool BoxesTouch(GridPoint a, GridPoint b, GridPoint c, GridPoint d) =>
        Math.Max(a.X, b.X) >= Math.Min(c.X, d.X)
        && Math.Max(c.X, d.X) >= Math.Min(a.X, b.X)
        && Math.Max(a.Y, b.Y) >= Math.Min(c.Y, d.Y)
        && Math.Max(c.Y, d.Y) >= Math.Min(a.Y, b.Y);
}
