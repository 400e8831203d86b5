using CalibGeom.Meshes;

namespace CalibGeom.Formats.Obj;

/// <summary>
/// Cuts a polygon in space, convex or not, into triangles by clipping ears, seen along the axis nearest to its normal.
/// Every vertex is used and the polygon's border is the triangles' border, so neighbours still fit. A border that
/// crosses itself has no proper cut; it gets one with the same border. Its room is used again for the next polygon.
/// </summary>
internal sealed class PolygonTriangulator
{
    // A proper polygon needs about one try a corner; without a limit one that crosses itself would take cubic time.
    private const int TriesPerCorner = 16;

    private readonly List<int> triangles = [];
    private double[] u = [];
    private double[] v = [];
    private int[] before = [];
    private int[] after = [];

    /// <summary>
    /// Three positions in the polygon for each triangle, n - 2 triangles in all; good until the next call.
    /// </summary>
    internal IReadOnlyList<int> Cut(ReadOnlySpan<Vector3D> corners)
    {
        triangles.Clear();
        if (corners.Length == 3)
            triangles.AddRange([0, 1, 2]);
        else
        {
            Begin(corners);
            Clip(corners.Length);
        }
        return triangles;
    }

    private void Begin(ReadOnlySpan<Vector3D> corners)
    {
        int n = corners.Length;
        if (n > u.Length)
            (u, v, before, after) = (new double[n], new double[n], new int[n], new int[n]);
        Vector3D normal = Normal(corners);
        double x = Math.Abs(normal.X),
            y = Math.Abs(normal.Y),
            z = Math.Abs(normal.Z);
        for (int i = 0; i < n; i++)
        {
            (before[i], after[i]) = ((i + n - 1) % n, (i + 1) % n);
            Vector3D p = corners[i];
            (u[i], v[i]) =
                z >= x && z >= y ? (p.X, p.Y)
                : x >= y ? (p.Y, p.Z)
                : (p.Z, p.X);
            if (
                (
                    z >= x && z >= y ? normal.Z
                    : x >= y ? normal.X
                    : normal.Y
                ) < 0
            )
                u[i] = -u[i];
        }
    }

    private void Clip(int left)
    {
        int at = 0,
            tried = 0,
            patience = TriesPerCorner * left;
        while (left > 3)
        {
            if (tried <= left && patience > 0 && !IsEar(at))
            {
                at = after[at];
                tried++;
                patience--;
                continue;
            }
            if (tried > left)
                patience = 0;
            triangles.AddRange([before[at], at, after[at]]);
            (after[before[at]], before[after[at]]) = (after[at], before[at]);
            at = before[at];
            left--;
            tried = 0;
        }
        triangles.AddRange([before[at], at, after[at]]);
    }

    private bool IsEar(int at)
    {
        int a = before[at],
            c = after[at];
        if (Turn(a, at, c) <= 0)
            return false;
        for (int p = after[c]; p != a; p = after[p])
            if (
                !SamePlace(p, a)
                && !SamePlace(p, c)
                && !SamePlace(p, at)
                && Turn(a, at, p) >= 0
                && Turn(at, c, p) >= 0
                && Turn(c, a, p) >= 0
            )
                return false;
        return true;
    }

    private bool SamePlace(int i, int j) => u[i] == u[j] && v[i] == v[j];

    private int Turn(int i, int j, int k) => ExactSign.Orient2D(u[i], v[i], u[j], v[j], u[k], v[k]);

    // Newell's sum: twice the area seen along each axis.
    private static Vector3D Normal(ReadOnlySpan<Vector3D> corners)
    {
        var sum = new Vector3D();
        for (int i = 0; i < corners.Length; i++)
            sum += Vector3D.Cross(corners[i] - corners[0], corners[(i + 1) % corners.Length] - corners[0]);
        return sum;
    }
}
