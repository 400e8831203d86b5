namespace CalibGeom.Planar;

internal sealed partial class ConstrainedDelaunay
{
    private void Insert(int p)
    {
        (int t, int onSide) = Locate(points[p]);
        if (onSide < 0)
            SplitTriangle(t, p);
        else
            SplitSide(t, onSide, p);
        while (suspects.TryPop(out (int Triangle, int Vertex) s))
            Legalise(s.Triangle, s.Vertex);
        last = triangleAt[p];
    }

    /// <summary>The triangle that holds a point, and the side the point lies on or -1.</summary>
    private (int Triangle, int Side) Locate(GridPoint p)
    {
        int t = last;
        while (true)
        {
            int onSide = -1,
                exit = -1;
            for (int side = 0; side < 3 && exit < 0; side++)
            {
                (int neighbour, int from, int to) = Across(t, side);
                int turn = Predicates.Turn(points[from], points[to], p);
                if (turn < 0)
                    exit = neighbour;
                else if (turn == 0)
                    onSide = side;
            }
            if (exit < 0)
                return (t, onSide);
            t = exit;
        }
    }

    private void SplitTriangle(int t, int p)
    {
        (int a, int b, int c) = Corners(t);
        int na = neighbours[3 * t],
            nb = neighbours[3 * t + 1],
            nc = neighbours[3 * t + 2];
        int u = Count,
            v = u + 1;
        Set(t, p, b, c, na, u, v);
        Append(p, c, a, nb, v, t);
        Append(p, a, b, nc, t, u);
        Replace(nb, t, u);
        Replace(nc, t, v);
        suspects.Push((t, p));
        suspects.Push((u, p));
        suspects.Push((v, p));
    }

    /// <summary>Splits both triangles at a side: t = (a, b, c) with p on b-c, and its neighbour (d, c, b).</summary>
    private void SplitSide(int t, int side, int p)
    {
        int a = corners[3 * t + side],
            b = corners[3 * t + (side + 1) % 3],
            c = corners[3 * t + (side + 2) % 3];
        int other = neighbours[3 * t + side],
            back = SideTo(other, t),
            d = corners[3 * other + back];
        int ab = neighbours[3 * t + (side + 2) % 3],
            ca = neighbours[3 * t + (side + 1) % 3];
        int dc = neighbours[3 * other + (back + 2) % 3],
            bd = neighbours[3 * other + (back + 1) % 3];
        int u = Count,
            v = u + 1;
        Set(t, p, a, b, ab, other, u);
        Set(other, p, b, d, bd, v, t);
        Append(p, c, a, ca, t, v);
        Append(p, d, c, dc, u, other);
        Replace(ca, t, u);
        Replace(dc, other, v);
        suspects.Push((t, p));
        suspects.Push((other, p));
        suspects.Push((u, p));
        suspects.Push((v, p));
    }

    /// <summary>
    /// Flips the side opposite the new vertex when the triangle behind it has the vertex inside its circle.
    /// </summary>
    private void Legalise(int t, int vertex)
    {
        int side = IndexOf(t, vertex),
            other = neighbours[3 * t + side];
        if (other < 0)
            return;
        int far = corners[3 * other + SideTo(other, t)];
        (int a, int b, int c) = Corners(t);
        if (Predicates.InCircle(points[a], points[b], points[c], points[far]) <= 0)
            return;
        Flip(t, side);
        suspects.Push((t, vertex));
        suspects.Push((other, vertex));
    }

    /// <summary>
    /// Turns the diagonal between t and its neighbour across a side; both keep the vertex that t had opposite it.
    /// </summary>
    private void Flip(int t, int side)
    {
        int a = corners[3 * t + side],
            b = corners[3 * t + (side + 1) % 3],
            c = corners[3 * t + (side + 2) % 3];
        int other = neighbours[3 * t + side],
            back = SideTo(other, t),
            d = corners[3 * other + back];
        int ab = neighbours[3 * t + (side + 2) % 3],
            ca = neighbours[3 * t + (side + 1) % 3];
        int dc = neighbours[3 * other + (back + 2) % 3],
            bd = neighbours[3 * other + (back + 1) % 3];
        Set(t, a, b, d, bd, other, ab);
        Set(other, a, d, c, dc, ca, t);
        Replace(bd, other, t);
        Replace(ca, t, other);
    }
}
