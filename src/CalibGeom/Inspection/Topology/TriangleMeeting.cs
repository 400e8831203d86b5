namespace CalibGeom.Inspection.Topology;

/// <summary>
/// Decides exactly how two triangles with area meet. The test of intervals on the common line of two planes follows
/// Guigue and Devillers, Fast and Robust Triangle-Triangle Overlap Test Using Orientation Predicates, 2003; contacts
/// are told from crossings by strict signs.
/// </summary>
internal sealed class TriangleMeeting(ExactMesh mesh, int[] triangles)
{
    private readonly TrianglePlanes planes = new(mesh, triangles);

    internal Meeting Of(int first, int second)
    {
        ReadOnlySpan<int> a = triangles.AsSpan(3 * first, 3),
            b = triangles.AsSpan(3 * second, 3);
        int shared = 0,
            ia = 0,
            ib = 0,
            sumA = 0,
            sumB = 0;
        for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            if (a[i] == b[j])
            {
                shared++;
                (ia, ib) = (i, j);
                sumA += i;
                sumB += j;
            }
        return shared switch
        {
            0 => Apart(first, second),
            1 => AtVertex(first, second, ia, ib),
            2 => planes.Side(first, b[3 - sumB]) != 0
                ? Meeting.None
                : InPlaneAtEdge(a[(4 - sumA) % 3], a[(5 - sumA) % 3], a[3 - sumA], b[3 - sumB]),
            _ => Meeting.None,
        };
    }

    // Over a common edge p, q the triangles meet elsewhere only when they lie in one plane on the same side of it.
    private Meeting InPlaneAtEdge(int p, int q, int a, int b)
    {
        int axis = mesh.AxisOf(p, q, a);
        return mesh.Turn(axis, p, q, a) == mesh.Turn(axis, p, q, b) ? Meeting.Cross : Meeting.None;
    }

    // From a common vertex each triangle covers one ray of the planes' common line; they meet when the rays point the
    // same way.
    private Meeting AtVertex(int first, int second, int cornerA, int cornerB)
    {
        int a1 = Next(first, cornerA),
            a2 = Next(first, cornerA + 1);
        if (mesh.IsParted(triangles[3 * first + cornerA], a1, a2, Next(second, cornerB), Next(second, cornerB + 1)))
            return Meeting.None;
        int sideA1 = planes.Side(second, a1),
            sideA2 = planes.Side(second, a2);
        if (sideA1 * sideA2 > 0)
            return Meeting.None;
        int b1 = Next(second, cornerB),
            b2 = Next(second, cornerB + 1);
        if (sideA1 == 0 && sideA2 == 0)
            return InPlaneAtVertex(triangles[3 * first + cornerA], a1, a2, b1, b2);
        int sideB1 = planes.Side(first, b1),
            sideB2 = planes.Side(first, b2);
        if (sideB1 * sideB2 > 0 || Math.Sign(sideA1 - sideA2) != -Math.Sign(sideB1 - sideB2))
            return Meeting.None;
        return sideA1 * sideA2 < 0 && sideB1 * sideB2 < 0 ? Meeting.Cross : Meeting.Touch;
    }

    private int Next(int triangle, int corner) => triangles[3 * triangle + (corner + 1) % 3];

    private Meeting InPlaneAtVertex(int p, int a1, int a2, int b1, int b2)
    {
        int axis = mesh.AxisOf(p, a1, a2);
        if (InPlane(axis, [p, a1, a2], [p, b1, b2]) == Meeting.Cross)
            return Meeting.Cross;
        bool along = SameRay(p, a1, b1) || SameRay(p, a1, b2) || SameRay(p, a2, b1) || SameRay(p, a2, b2);
        return along ? Meeting.Touch : Meeting.None;
    }

    private bool SameRay(int p, int a, int b)
    {
        if (mesh.AxisOf(p, a, b) >= 0)
            return false;
        Meshes.Vector3D from = mesh.Point(p),
            u = mesh.Point(a),
            v = mesh.Point(b);
        return u.X.CompareTo(from.X) == v.X.CompareTo(from.X)
            && u.Y.CompareTo(from.Y) == v.Y.CompareTo(from.Y)
            && u.Z.CompareTo(from.Z) == v.Z.CompareTo(from.Z);
    }

    private Meeting Apart(int first, int second)
    {
        ReadOnlySpan<int> a = triangles.AsSpan(3 * first, 3),
            b = triangles.AsSpan(3 * second, 3);
        Span<int> sidesA = stackalloc int[3],
            sidesB = stackalloc int[3];
        if (!Straddles(second, a, sidesA))
            return Meeting.None;
        if (sidesA[0] == 0 && sidesA[1] == 0 && sidesA[2] == 0)
            return InPlane(mesh.AxisOf(a[0], a[1], a[2]), a, b);
        if (!Straddles(first, b, sidesB))
            return Meeting.None;
        (int aloneA, bool flipB) = Alone(sidesA);
        (int aloneB, bool flipA) = Alone(sidesB);
        int pa = a[aloneA],
            qa = a[(aloneA + (flipA ? 2 : 1)) % 3],
            ra = a[(aloneA + (flipA ? 1 : 2)) % 3];
        int pb = b[aloneB],
            qb = b[(aloneB + (flipB ? 2 : 1)) % 3],
            rb = b[(aloneB + (flipB ? 1 : 2)) % 3];
        int low = -mesh.Side(pa, qa, pb, qb),
            high = mesh.Side(pa, ra, pb, rb);
        if (low < 0 || high < 0)
            return Meeting.None;
        bool through = Both(sidesA) && Both(sidesB) && low > 0 && high > 0;
        return through ? Meeting.Cross : Meeting.Touch;
    }

    private bool Straddles(int plane, ReadOnlySpan<int> corners, Span<int> sides)
    {
        for (int i = 0; i < 3; i++)
            sides[i] = planes.Side(plane, corners[i]);
        return Math.Abs(sides[0] + sides[1] + sides[2]) < 3;
    }

    private static bool Both(ReadOnlySpan<int> sides) => sides.Contains(1) && sides.Contains(-1);

    /// <summary>
    /// The corner alone on its side, and whether the other triangle must be turned over so that this corner is on its
    /// positive side or, when it is in the plane, the other two are on its negative side.
    /// </summary>
    private static (int Corner, bool Flip) Alone(ReadOnlySpan<int> sides)
    {
        if (sides.Count(1) == 1)
            return (sides.IndexOf(1), false);
        if (sides.Count(-1) == 1)
            return (sides.IndexOf(-1), true);
        return (sides.IndexOf(0), sides.Contains(1));
    }

    // Convex shapes in a plane have disjoint insides exactly when the line of some edge has all of the other shape on
    // its outer side.
    private Meeting InPlane(int axis, ReadOnlySpan<int> a, ReadOnlySpan<int> b)
    {
        int apart = Math.Max(Separation(axis, a, b), Separation(axis, b, a));
        return apart switch
        {
            2 => Meeting.None,
            1 => Meeting.Touch,
            _ => Meeting.Cross,
        };
    }

    /// <summary>2 when an edge of a has all of b strictly outside, 1 when outside or on it, 0 otherwise.</summary>
    private int Separation(int axis, ReadOnlySpan<int> a, ReadOnlySpan<int> b)
    {
        int inside = mesh.Turn(axis, a[0], a[1], a[2]),
            best = 0;
        for (int i = 0; i < 3; i++)
        {
            int least = 2;
            foreach (int corner in b)
            {
                int turn = inside * mesh.Turn(axis, a[i], a[(i + 1) % 3], corner);
                least = Math.Min(
                    least,
                    turn < 0 ? 2
                        : turn == 0 ? 1
                        : 0
                );
            }
            best = Math.Max(best, least);
        }
        return best;
    }
}
