using CalibGeom.Planar;

namespace CalibGeom.Slicing;

/// <summary>Moves the edges of one contour along their normals, vertex by vertex (mitred).</summary>
internal static class ContourOffset
{
    // A corner moves by at most twice the distance.
    private const double Mitre = 0.25,
        Same = 1e-9;

    internal static void Move(ReadOnlySpan<Vector2D> ring, double outward, Span<Vector2D> moved)
    {
        for (int i = 0; i < ring.Length; i++)
        {
            Vector2D before = Normal(ring, i, -1),
                after = Normal(ring, i, 1);
            double along = Math.Max(Mitre, (1 + before.X * after.X + before.Y * after.Y) / 2),
                by = outward / (2 * along);
            moved[i] = new Vector2D(ring[i].X + by * (before.X + after.X), ring[i].Y + by * (before.Y + after.Y));
        }
        // Moved past its middle a contour would come out again on the other side, the right way round.
        if (AllTurned(ring, moved))
            moved.Fill(moved[0]);
    }

    private static bool AllTurned(ReadOnlySpan<Vector2D> ring, ReadOnlySpan<Vector2D> moved)
    {
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            double x = ring[i].X - ring[j].X,
                y = ring[i].Y - ring[j].Y;
            if (x * x + y * y > Same * Same && x * (moved[i].X - moved[j].X) + y * (moved[i].Y - moved[j].Y) > 0)
                return false;
        }
        return true;
    }

    // The outward normal of the edge before or after a vertex, past vertices that lie on it.
    private static Vector2D Normal(ReadOnlySpan<Vector2D> ring, int at, int step)
    {
        for (int k = 1; k < ring.Length; k++)
        {
            Vector2D other = ring[(at + k * step % ring.Length + ring.Length) % ring.Length];
            double dx = step * (other.X - ring[at].X),
                dy = step * (other.Y - ring[at].Y),
                length = Math.Sqrt(dx * dx + dy * dy);
            if (length > Same)
                return new Vector2D(dy / length, -dx / length);
        }
        return default;
    }
}
