using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Tests.Inspection;

/// <summary>Closed meshes with known sections and volumes.</summary>
internal static class Shapes
{
    internal static TriangleMesh Box(double x0, double y0, double z0, double x1, double y1, double z1) =>
        Prismoid(
            [new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)],
            z0,
            [new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)],
            z1
        );

    /// <summary>Ruled walls between two rings that are star-shaped about their mean points.</summary>
    internal static TriangleMesh Prismoid(Vector2D[] bottom, double z0, Vector2D[] top, double z1)
    {
        int n = bottom.Length;
        var xyz = new List<double>();
        var triangles = new List<int>();
        foreach (Vector2D p in bottom)
            xyz.AddRange([p.X, p.Y, z0]);
        foreach (Vector2D p in top)
            xyz.AddRange([p.X, p.Y, z1]);
        xyz.AddRange([
            bottom.Average(p => p.X),
            bottom.Average(p => p.Y),
            z0,
            top.Average(p => p.X),
            top.Average(p => p.Y),
            z1,
        ]);
        for (int i = 0, j = n - 1; i < n; j = i++)
            triangles.AddRange([j, i, n + i, j, n + i, n + j, i, j, 2 * n, n + j, n + i, 2 * n + 1]);
        return new TriangleMesh(xyz.ToArray(), triangles.ToArray());
    }

    /// <summary>
    /// A profile (radius, z), counter-clockwise with the radius to the right, turned about the z axis in n steps.
    /// </summary>
    internal static TriangleMesh Revolve(int n, params (double R, double Z)[] profile)
    {
        var xyz = new List<double>();
        var triangles = new List<int>();
        foreach ((double r, double z) in profile)
            for (int s = 0; s < n; s++)
                xyz.AddRange([r * Math.Cos(2 * Math.PI * s / n), r * Math.Sin(2 * Math.PI * s / n), z]);
        for (int i = 0, j = profile.Length - 1; i < profile.Length; j = i++)
        for (int s = 0; s < n; s++)
        {
            int next = (s + 1) % n;
            if (profile[j].R > 0)
                triangles.AddRange([j * n + s, j * n + next, i * n + (profile[i].R > 0 ? next : 0)]);
            if (profile[i].R > 0)
                triangles.AddRange([(profile[j].R > 0 ? j * n + s : j * n), i * n + next, i * n + s]);
        }
        for (int i = 0; i < profile.Length; i++)
            if (profile[i].R == 0)
                for (int t = 0; t < triangles.Count; t++)
                    if (triangles[t] / n == i)
                        triangles[t] = i * n;
        return new TriangleMesh(xyz.ToArray(), triangles.ToArray());
    }

    /// <summary>The area of a regular polygon over that of the circle through its vertices, times pi.</summary>
    internal static double PolygonPi(int n) => n / 2.0 * Math.Sin(2 * Math.PI / n);

    internal static TriangleMesh Join(params TriangleMesh[] meshes)
    {
        var xyz = new List<double>();
        var triangles = new List<int>();
        foreach (TriangleMesh mesh in meshes)
        {
            int first = xyz.Count / 3;
            xyz.AddRange(mesh.Coordinates);
            foreach (int v in mesh.Triangles)
                triangles.Add(v + first);
        }
        return new TriangleMesh(xyz.ToArray(), triangles.ToArray());
    }

    internal static TriangleMesh InsideOut(TriangleMesh mesh)
    {
        int[] reversed = mesh.Triangles.ToArray();
        for (int t = 0; t < reversed.Length; t += 3)
            (reversed[t + 1], reversed[t + 2]) = (reversed[t + 2], reversed[t + 1]);
        return new TriangleMesh(mesh.Coordinates, reversed);
    }

    /// <summary>A ring of n vertices at rising angles and random radii from the least to the most.</summary>
    internal static Vector2D[] Star(Random random, int n, double x, double y, double least, double most) =>
        Enumerable
            .Range(0, n)
            .Select(i =>
            {
                double r = least + (most - least) * random.NextDouble(),
                    angle = 2 * Math.PI * i / n;
                return new Vector2D(x + r * Math.Cos(angle), y + r * Math.Sin(angle));
            })
            .ToArray();
}
