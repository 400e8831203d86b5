using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>The distance between two triangles in space.</summary>
internal static class TriangleDistance
{
    /// <summary>The squared distance; 0 when they touch or cross.</summary>
    internal static double Squared(Vector3D a, Vector3D b, Vector3D c, Vector3D p, Vector3D q, Vector3D r)
    {
        if (Pierces(a, b, c, p, q, r) || Pierces(p, q, r, a, b, c))
            return 0;
        double best = double.PositiveInfinity;
        Span<Vector3D> one = [a, b, c],
            other = [p, q, r];
        for (int i = 0; i < 3; i++)
        {
            best = Math.Min(best, Math.Min(PointFace(one[i], p, q, r), PointFace(other[i], a, b, c)));
            for (int k = 0; k < 3; k++)
                best = Math.Min(best, SegmentSegment(one[i], one[(i + 1) % 3], other[k], other[(k + 1) % 3]));
        }
        return best;
    }

    /// <summary>
    /// The squared distance to the inside of the face when the foot lies there; infinite otherwise (edges are looked at
    /// elsewhere).
    /// </summary>
    private static double PointFace(Vector3D x, Vector3D a, Vector3D b, Vector3D c)
    {
        Vector3D normal = Vector3D.Cross(b - a, c - a);
        double square = Vector3D.Dot(normal, normal);
        if (!(square > 0))
            return double.PositiveInfinity;
        bool inside =
            Vector3D.Dot(Vector3D.Cross(b - a, x - a), normal) >= 0
            && Vector3D.Dot(Vector3D.Cross(c - b, x - b), normal) >= 0
            && Vector3D.Dot(Vector3D.Cross(a - c, x - c), normal) >= 0;
        if (!inside)
            return double.PositiveInfinity;
        double height = Vector3D.Dot(x - a, normal);
        return height * height / square;
    }

    /// <summary>Whether an edge of the first triangle goes through the second.</summary>
    private static bool Pierces(Vector3D a, Vector3D b, Vector3D c, Vector3D p, Vector3D q, Vector3D r)
    {
        Vector3D normal = Vector3D.Cross(q - p, r - p);
        double ha = Vector3D.Dot(a - p, normal),
            hb = Vector3D.Dot(b - p, normal),
            hc = Vector3D.Dot(c - p, normal);
        return Pierces(a, b, ha, hb, p, q, r, normal)
            || Pierces(b, c, hb, hc, p, q, r, normal)
            || Pierces(c, a, hc, ha, p, q, r, normal);
    }

    private static bool Pierces(
        Vector3D a,
        Vector3D b,
        double ha,
        double hb,
        Vector3D p,
        Vector3D q,
        Vector3D r,
        Vector3D normal
    )
    {
        if (!(ha * hb < 0))
            return false;
        Vector3D x = a + (b - a) * (ha / (ha - hb));
        return Vector3D.Dot(Vector3D.Cross(q - p, x - p), normal) >= 0
            && Vector3D.Dot(Vector3D.Cross(r - q, x - q), normal) >= 0
            && Vector3D.Dot(Vector3D.Cross(p - r, x - r), normal) >= 0;
    }

    private static double SegmentSegment(Vector3D a, Vector3D b, Vector3D p, Vector3D q)
    {
        Vector3D u = b - a,
            v = q - p,
            w = a - p;
        double uu = Vector3D.Dot(u, u),
            uv = Vector3D.Dot(u, v),
            vv = Vector3D.Dot(v, v),
            uw = Vector3D.Dot(u, w),
            vw = Vector3D.Dot(v, w);
        double det = uu * vv - uv * uv;
        double s = det > 1e-14 * uu * vv ? Math.Clamp((uv * vw - vv * uw) / det, 0, 1) : 0;
        double t = vv > 0 ? Math.Clamp((uv * s + vw) / vv, 0, 1) : 0;
        s = uu > 0 ? Math.Clamp((uv * t - uw) / uu, 0, 1) : 0;
        Vector3D gap = w + u * s - v * t;
        return Vector3D.Dot(gap, gap);
    }
}
