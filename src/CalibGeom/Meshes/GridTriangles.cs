namespace CalibGeom.Meshes;

/// <summary>
/// Exact decisions about triangles whose corners are grid points: differences are below 2^25, so that 128 bits hold
/// every determinant.
/// </summary>
internal static class GridTriangles
{
    /// <summary>Whether two closed triangles have a point in common beyond the corners that they share.</summary>
    internal static bool Meet(in GridTriangle s, in GridTriangle t)
    {
        int shared = 0,
            keyS = 0,
            keyT = 0;
        for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            if (s[i] == t[j])
            {
                shared++;
                keyS += i;
                keyT += j;
            }
        return shared switch
        {
            0 => Touch(s, t),
            1 => SegmentTouches(s[(keyS + 1) % 3], s[(keyS + 2) % 3], t)
                || SegmentTouches(t[(keyT + 1) % 3], t[(keyT + 2) % 3], s),
            2 => FoldOnto(s[3 - keyS], t[3 - keyT], s[(4 - keyS) % 3], s[(5 - keyS) % 3]),
            _ => true,
        };
    }

    /// <summary>Whether two closed triangles have any point in common.</summary>
    internal static bool Touch(in GridTriangle s, in GridTriangle t)
    {
        for (int i = 0; i < 3; i++)
            if (SegmentTouches(s[i], s[(i + 1) % 3], t) || SegmentTouches(t[i], t[(i + 1) % 3], s))
                return true;
        return false;
    }

    /// <summary>
    /// The side of the plane through a, b, c that d lies on: +1 where a, b, c run counter-clockwise as seen from d, 0
    /// in the plane.
    /// </summary>
    internal static int Side(GridPoint3D a, GridPoint3D b, GridPoint3D c, GridPoint3D d)
    {
        (long x, long y, long z) = Normal(a, b, c);
        return Int128.Sign(
            (Int128)x * ((long)d.X - a.X) + (Int128)y * ((long)d.Y - a.Y) + (Int128)z * ((long)d.Z - a.Z)
        );
    }

    /// <summary>The normal (b - a) x (c - a), exactly; zero when the three lie on a line.</summary>
    internal static (long X, long Y, long Z) Normal(GridPoint3D a, GridPoint3D b, GridPoint3D c)
    {
        long ux = (long)b.X - a.X,
            uy = (long)b.Y - a.Y,
            uz = (long)b.Z - a.Z;
        long vx = (long)c.X - a.X,
            vy = (long)c.Y - a.Y,
            vz = (long)c.Z - a.Z;
        return (uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
    }

    private static bool SegmentTouches(GridPoint3D p, GridPoint3D q, in GridTriangle t)
    {
        int sideP = Side(t.A, t.B, t.C, p),
            sideQ = Side(t.A, t.B, t.C, q);
        if (sideP * sideQ > 0)
            return false;
        if (sideP == 0 && sideQ == 0)
            return FlatTouch(p, q, t);
        int a = Side(p, q, t.A, t.B),
            b = Side(p, q, t.B, t.C),
            c = Side(p, q, t.C, t.A);
        return (a >= 0 && b >= 0 && c >= 0) || (a <= 0 && b <= 0 && c <= 0);
    }

    /// <summary>Segment and triangle in one plane, seen along an axis that the plane is not parallel to.</summary>
    private static bool FlatTouch(GridPoint3D p, GridPoint3D q, in GridTriangle t)
    {
        (long x, long y, long z) = Normal(t.A, t.B, t.C);
        int axis =
            z != 0 ? 2
            : y != 0 ? 1
            : x != 0 ? 0
            : 2;
        Planar.GridPoint u = Drop(p, axis),
            v = Drop(q, axis),
            a = Drop(t.A, axis),
            b = Drop(t.B, axis),
            c = Drop(t.C, axis);
        if (
            Planar.Predicates.SegmentsTouch(u, v, a, b)
            || Planar.Predicates.SegmentsTouch(u, v, b, c)
            || Planar.Predicates.SegmentsTouch(u, v, c, a)
        )
            return true;
        int ab = Planar.Predicates.Turn(a, b, u),
            bc = Planar.Predicates.Turn(b, c, u),
            ca = Planar.Predicates.Turn(c, a, u);
        return ab == bc && bc == ca && ab != 0;
    }

    /// <summary>Whether two triangles over the edge e-f, with tips s and t, lie on each other.</summary>
    private static bool FoldOnto(GridPoint3D s, GridPoint3D t, GridPoint3D e, GridPoint3D f)
    {
        if (Side(e, f, s, t) != 0)
            return false;
        (long ax, long ay, long az) = Normal(e, f, s);
        (long bx, long by, long bz) = Normal(e, f, t);
        return (Int128)ax * bx + (Int128)ay * by + (Int128)az * bz > 0;
    }

    private static Planar.GridPoint Drop(GridPoint3D p, int axis) =>
        axis switch
        {
            0 => new(p.Y, p.Z),
            1 => new(p.Z, p.X),
            _ => new(p.X, p.Y),
        };
}
