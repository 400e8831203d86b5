using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.TestObjects;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Straight lines held against the triangles of a mesh.</summary>
internal sealed class LaneRays(TriangleMesh mesh)
{
    /// <summary>
    /// Into how many parts each side of a tunnel's two mouths is cut: a line for each of their fours.
    /// </summary>
    private const int Cuts = 6;

    private readonly Triangle3D[] triangles = [.. Enumerable.Range(0, mesh.TriangleCount).Select(mesh.Triangle)];

    /// <summary>The share of the straight lines through a tunnel that meet nothing on either side.</summary>
    internal double FreeThrough(GaugeLine line, Vector3D along, double depth, double width)
    {
        Vector3D middle = (line.From.Point + line.To.Point) * 0.5,
            across = Vector3D.Cross(along, new Vector3D(0, 0, 1));
        // Off the faces by a grid unit or two: the tunnel's own walls do not count.
        double height = line.Length() - 4.0 / Grid.UnitsPerMillimetre,
            wide = width - 4.0 / Grid.UnitsPerMillimetre;
        var near = triangles.Where(t => MayMeet(t, middle, along, across, depth, wide, height)).ToArray();
        var random = new Random(7);
        int free = 0;
        for (int i = 0; i < Cuts * Cuts * Cuts * Cuts; i++)
        {
            Vector3D a = Point(-depth / 2, i % Cuts, i / Cuts % Cuts),
                b = Point(depth / 2, i / Cuts / Cuts % Cuts, i / Cuts / Cuts / Cuts);
            if (!Array.Exists(near, t => Crossing(t, a, b - a) is not null))
                free++;
        }
        return (double)free / (Cuts * Cuts * Cuts * Cuts);

        Vector3D Point(double end, int side, int level) =>
            middle
            + along * end
            + across * (((side + random.NextDouble()) / Cuts - 0.5) * wide)
            + new Vector3D(0, 0, ((level + random.NextDouble()) / Cuts - 0.5) * height);
    }

    /// <summary>The highest place of the mesh above or below a point; minus infinity where there is none.</summary>
    internal double Highest(double x, double y) => Heights(x, y).DefaultIfEmpty(double.NegativeInfinity).Max();

    /// <summary>The heights at which an upright line passes through the mesh.</summary>
    internal IEnumerable<double> Heights(double x, double y) =>
        triangles
            .Where(t =>
                Math.Min(t.A.X, Math.Min(t.B.X, t.C.X)) <= x
                && x <= Math.Max(t.A.X, Math.Max(t.B.X, t.C.X))
                && Math.Min(t.A.Y, Math.Min(t.B.Y, t.C.Y)) <= y
                && y <= Math.Max(t.A.Y, Math.Max(t.B.Y, t.C.Y))
            )
            .Select(t => Crossing(t, new Vector3D(x, y, 0), new Vector3D(0, 0, 1)))
            .OfType<double>();

    /// <summary>Whether no side of the double cone that all lines lie in has the triangle beyond it.</summary>
    private static bool MayMeet(
        Triangle3D triangle,
        Vector3D middle,
        Vector3D along,
        Vector3D across,
        double depth,
        double wide,
        double height
    )
    {
        Vector3D[] corners = [triangle.A - middle, triangle.B - middle, triangle.C - middle];
        double far = corners.Max(c => Math.Abs(Vector3D.Dot(c, along)));
        double side = wide / 2 + far * wide / depth,
            level = height / 2 + far * height / depth;
        return corners.Min(c => Vector3D.Dot(c, across)) <= side
            && corners.Max(c => Vector3D.Dot(c, across)) >= -side
            && corners.Min(c => c.Z) <= level
            && corners.Max(c => c.Z) >= -level;
    }

    /// <summary>
    /// How far along a line, endless on both sides, it passes a triangle, or null (after Moeller and Trumbore 1997).
    /// </summary>
    private static double? Crossing(Triangle3D triangle, Vector3D from, Vector3D along)
    {
        Vector3D e1 = triangle.B - triangle.A,
            e2 = triangle.C - triangle.A,
            p = Vector3D.Cross(along, e2);
        double determinant = Vector3D.Dot(e1, p);
        if (determinant == 0)
            return null;
        Vector3D s = from - triangle.A;
        double u = Vector3D.Dot(s, p) / determinant;
        if (u is < 0 or > 1)
            return null;
        Vector3D q = Vector3D.Cross(s, e1);
        double v = Vector3D.Dot(along, q) / determinant;
        return v < 0 || u + v > 1 ? null : Vector3D.Dot(e2, q) / determinant;
    }
}
