using CalibGeom.Inspection.Topology;
using Point = (
    CalibGeom.Tests.Inspection.Topology.Rational X,
    CalibGeom.Tests.Inspection.Topology.Rational Y,
    CalibGeom.Tests.Inspection.Topology.Rational Z
);

namespace CalibGeom.Tests.Inspection.Topology;

/// <summary>
/// How two triangles meet, the slow and plain way: all points where an edge of one meets the other triangle, as exact
/// fractions. Shares no code and no method with the library.
/// </summary>
internal static class ClippedMeeting
{
    internal static Meeting Of(Point[] a, Point[] b)
    {
        Point[] shared = [.. a.Where(b.Contains)];
        if (shared.Length == 3)
            return Meeting.None;
        bool coplanar = b.All(p => Height(a, p).Sign == 0);
        List<Point> all = [.. coplanar ? InPlane(a, b) : EdgesThrough(a, b).Concat(EdgesThrough(b, a))];
        Point[] points = [.. all.Distinct()];
        bool apart = points.All(p => shared.Contains(p) || (shared.Length == 2 && OnLine(shared[0], shared[1], p)));
        if (apart)
            return Meeting.None;
        if (coplanar)
            return points.Any(p => points.Any(q => !OnLine(points[0], p, q))) ? Meeting.Cross : Meeting.Touch;
        foreach (Point p in points)
        foreach (Point q in points)
            if (p != q && Inside(a, Middle(p, q), true) && Inside(b, Middle(p, q), true))
                return Meeting.Cross;
        return Meeting.Touch;
    }

    private static IEnumerable<Point> EdgesThrough(Point[] edges, Point[] face)
    {
        for (int i = 0; i < 3; i++)
        {
            Point u = edges[i],
                v = edges[(i + 1) % 3];
            Rational hu = Height(face, u),
                hv = Height(face, v);
            if (hu.Sign == 0 && Inside(face, u, false))
                yield return u;
            if (hu.Sign * hv.Sign >= 0)
                continue;
            Point through = Add(u, Scale(Subtract(v, u), hu / (hu - hv)));
            if (Inside(face, through, false))
                yield return through;
        }
    }

    private static IEnumerable<Point> InPlane(Point[] a, Point[] b)
    {
        foreach (Point p in a.Where(p => Inside(b, p, false)).Concat(b.Where(p => Inside(a, p, false))))
            yield return p;
        Point normal = Cross(Subtract(a[1], a[0]), Subtract(a[2], a[0]));
        for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
        {
            Point u = a[i],
                d = Subtract(a[(i + 1) % 3], u),
                w = b[j],
                e = Subtract(b[(j + 1) % 3], w);
            Rational det = Dot(normal, Cross(d, e));
            if (det.Sign == 0)
                continue;
            Rational s = Dot(normal, Cross(Subtract(w, u), e)) / det,
                t = Dot(normal, Cross(Subtract(w, u), d)) / det;
            if (s.Sign >= 0 && t.Sign >= 0 && ((Rational)1 - s).Sign >= 0 && ((Rational)1 - t).Sign >= 0)
                yield return Add(u, Scale(d, s));
        }
    }

    private static bool Inside(Point[] t, Point p, bool strictly)
    {
        Point normal = Cross(Subtract(t[1], t[0]), Subtract(t[2], t[0]));
        return Enumerable
            .Range(0, 3)
            .All(i => Dot(normal, Cross(Subtract(t[(i + 1) % 3], t[i]), Subtract(p, t[i]))).Sign >= (strictly ? 1 : 0));
    }

    private static Rational Height(Point[] t, Point p) =>
        Dot(Cross(Subtract(t[1], t[0]), Subtract(t[2], t[0])), Subtract(p, t[0]));

    private static bool OnLine(Point a, Point b, Point p) => Cross(Subtract(b, a), Subtract(p, a)) == (0, 0, 0);

    private static Point Middle(Point a, Point b) => Scale(Add(a, b), new Rational(1, 2));

    private static Point Add(Point a, Point b) => (a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    private static Point Subtract(Point a, Point b) => (a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    private static Point Scale(Point a, Rational factor) => (a.X * factor, a.Y * factor, a.Z * factor);

    private static Rational Dot(Point a, Point b) => a.X * b.X + a.Y * b.Y + a.Z * b.Z;

    private static Point Cross(Point a, Point b) =>
        (a.Y * b.Z - a.Z * b.Y, a.Z * b.X - a.X * b.Z, a.X * b.Y - a.Y * b.X);
}
