using System.Runtime.Intrinsics;

namespace CalibGeom.Meshes;

/// <summary>
/// A box turned to what it holds: round a thin triangle that lies aslant, or a sector of such triangles, nearly as
/// thin as they are. After Gottschalk, Lin and Manocha, OBBTree, 1996.
/// </summary>
internal readonly struct OrientedBox
{
    // Of the larger of both boxes: more than rounding can turn or move one.
    private const double Unsure = 1e-9;

    private readonly Vector3D middle;
    private readonly Vector3D axisX;
    private readonly Vector3D axisY;
    private readonly Vector3D axisZ;
    private readonly Vector3D half;

    private OrientedBox(Vector3D middle, Vector3D axisX, Vector3D axisY, Vector3D axisZ, Vector3D half)
    {
        (this.middle, this.axisX, this.axisY, this.axisZ, this.half) = (middle, axisX, axisY, axisZ, half);
    }

    /// <summary>About the longest half edge; it tells which of two boxes is to be taken apart.</summary>
    internal double Reach => Math.Max(half.X, Math.Max(half.Y, half.Z));

    /// <summary>The box of two corners, along the axes.</summary>
    internal static OrientedBox Between(Vector128<float> low, Vector128<float> high)
    {
        Vector3D from = new(low[0], low[1], low[2]),
            to = new(high[0], high[1], high[2]);
        return new((from + to) * 0.5, new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), (to - from) * 0.5);
    }

    /// <summary>A box round triangles, its axes from their longest edges and normals.</summary>
    internal static OrientedBox Around(TriangleMesh mesh, ReadOnlySpan<int> triangles)
    {
        (Vector3D x, Vector3D y, Vector3D z) = Axes(mesh, triangles);
        Vector3D origin = mesh.Triangle(triangles[0]).A;
        Vector3D min = default,
            max = default;
        double far = 0;
        foreach (int triangle in triangles)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
            foreach (Vector3D corner in (ReadOnlySpan<Vector3D>)[a, b, c])
            {
                Vector3D way = corner - origin;
                var seen = new Vector3D(Vector3D.Dot(way, x), Vector3D.Dot(way, y), Vector3D.Dot(way, z));
                (min, max) = (Vector3D.Least(min, seen), Vector3D.Most(max, seen));
                far = Math.Max(far, Largest(corner));
            }
        }
        Vector3D centre = (min + max) * 0.5;
        double slack = Unsure * (Largest(max - min) + 1e-4 * far);
        return new(
            origin + x * centre.X + y * centre.Y + z * centre.Z,
            x,
            y,
            z,
            (max - min) * 0.5 + new Vector3D(slack, slack, slack)
        );
    }

    /// <summary>Whether two boxes may have a point in common; never false where they have one.</summary>
    internal bool Meets(in OrientedBox other)
    {
        Vector3D way = other.middle - middle;
        double slack = Unsure * (Reach + other.Reach);
        return !(
            PartedAlongOwn(this, other, way, slack)
            || PartedAlongOwn(other, this, way, slack)
            || PartedAcross(axisX, other, way, slack)
            || PartedAcross(axisY, other, way, slack)
            || PartedAcross(axisZ, other, way, slack)
        );
    }

    private static bool PartedAlongOwn(in OrientedBox one, in OrientedBox other, Vector3D way, double slack) =>
        Math.Abs(Vector3D.Dot(way, one.axisX)) > one.half.X + other.Along(one.axisX) + slack
        || Math.Abs(Vector3D.Dot(way, one.axisY)) > one.half.Y + other.Along(one.axisY) + slack
        || Math.Abs(Vector3D.Dot(way, one.axisZ)) > one.half.Z + other.Along(one.axisZ) + slack;

    private bool PartedAcross(Vector3D axis, in OrientedBox other, Vector3D way, double slack) =>
        Parted(Vector3D.Cross(axis, other.axisX), other, way, slack)
        || Parted(Vector3D.Cross(axis, other.axisY), other, way, slack)
        || Parted(Vector3D.Cross(axis, other.axisZ), other, way, slack);

    // Any direction may be tried, so that what rounding does to a product of axes does no harm.
    private bool Parted(Vector3D direction, in OrientedBox other, Vector3D way, double slack) =>
        Math.Abs(Vector3D.Dot(way, direction)) > Along(direction) + other.Along(direction) + slack;

    /// <summary>Half of what the box covers of a direction.</summary>
    private double Along(Vector3D direction) =>
        half.X * Math.Abs(Vector3D.Dot(axisX, direction))
        + half.Y * Math.Abs(Vector3D.Dot(axisY, direction))
        + half.Z * Math.Abs(Vector3D.Dot(axisZ, direction));

    private static (Vector3D X, Vector3D Y, Vector3D Z) Axes(TriangleMesh mesh, ReadOnlySpan<int> triangles)
    {
        Vector3D along = default,
            normal = default;
        foreach (int triangle in triangles)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
            along = AddAligned(along, LongestEdge(a, b, c));
            normal = AddAligned(normal, Vector3D.Cross(b - a, c - a));
        }
        Vector3D x = Unit(along, new Vector3D(1, 0, 0));
        Vector3D z = normal - x * Vector3D.Dot(normal, x);
        if (z.Length <= 1e-6 * normal.Length)
            z = Vector3D.Cross(x, Math.Abs(x.X) < 0.5 ? new Vector3D(1, 0, 0) : new Vector3D(0, 1, 0));
        z = Unit(z, x);
        return (x, Vector3D.Cross(z, x), z);
    }

    private static Vector3D AddAligned(Vector3D sum, Vector3D next) =>
        Vector3D.Dot(sum, next) < 0 ? sum - next : sum + next;

    private static Vector3D LongestEdge(Vector3D a, Vector3D b, Vector3D c)
    {
        (Vector3D ab, Vector3D bc, Vector3D ca) = (b - a, c - b, a - c);
        Vector3D longest = ab.Length >= bc.Length ? ab : bc;
        return longest.Length >= ca.Length ? longest : ca;
    }

    private static Vector3D Unit(Vector3D v, Vector3D otherwise) => v.Length > 0 ? v * (1 / v.Length) : otherwise;

    private static double Largest(Vector3D p) => Math.Max(Math.Abs(p.X), Math.Max(Math.Abs(p.Y), Math.Abs(p.Z)));
}
