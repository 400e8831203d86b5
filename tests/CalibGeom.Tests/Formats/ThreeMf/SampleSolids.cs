using CalibGeom.Meshes;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Formats.ThreeMf;

/// <summary>
/// Cylinder, sphere and torus of the 3MF sample files, tessellated anew. The files' own vertices are not listed; how
/// they are cut into triangles is deduced from the counts, volumes and areas in CHECKS.md 10.3, which one division each
/// fits to a few millionths.
/// </summary>
internal static class SampleSolids
{
    private const double Golden = 1.6180339887498949;

    private static readonly Vector3D[] Icosahedron =
    [
        .. new Vector3D[]
        {
            new(-1, Golden, 0),
            new(1, Golden, 0),
            new(-1, -Golden, 0),
            new(1, -Golden, 0),
            new(0, -1, Golden),
            new(0, 1, Golden),
            new(0, -1, -Golden),
            new(0, 1, -Golden),
            new(Golden, 0, -1),
            new(Golden, 0, 1),
            new(-Golden, 0, -1),
            new(-Golden, 0, 1),
        }.Select(p => p * (1 / p.Length)),
    ];

    private static readonly (int A, int B, int C)[] Faces =
    [
        (0, 11, 5),
        (0, 5, 1),
        (0, 1, 7),
        (0, 7, 10),
        (0, 10, 11),
        (1, 5, 9),
        (5, 11, 4),
        (11, 10, 2),
        (10, 7, 6),
        (7, 1, 8),
        (3, 9, 4),
        (3, 4, 2),
        (3, 2, 6),
        (3, 6, 8),
        (3, 8, 9),
        (4, 9, 5),
        (2, 4, 11),
        (6, 2, 10),
        (8, 6, 7),
        (9, 8, 1),
    ];

    /// <summary>
    /// A prism over 22 corners, radius 10, height 20, each cap a fan about its centre: 2 * 22 + 2 vertices, 4 * 22
    /// triangles.
    /// </summary>
    internal static TriangleMesh Cylinder()
    {
        const int N = 22;
        var points = new List<Vector3D>();
        foreach (double z in new[] { 0.0, 20 })
            for (int i = 0; i < N; i++)
                points.Add(new(10 * Math.Cos(2 * Math.PI * i / N), 10 * Math.Sin(2 * Math.PI * i / N), z));
        points.AddRange([new(0, 0, 0), new(0, 0, 20)]);
        var triangles = new List<int>();
        for (int i = 0; i < N; i++)
        {
            int next = (i + 1) % N;
            triangles.AddRange([i, next, N + next, i, N + next, N + i, 2 * N, next, i, 2 * N + 1, N + i, N + next]);
        }
        return Rounded(points, triangles);
    }

    /// <summary>
    /// An icosahedron of radius 10 with each edge cut into 12 equal arcs, and the rows between them into equal arcs
    /// again: 10 * 12 * 12 + 2 vertices, 20 * 12 * 12 triangles.
    /// </summary>
    internal static TriangleMesh Sphere()
    {
        const int F = 12;
        var points = new List<Vector3D>();
        var triangles = new List<int>();
        foreach ((int a, int b, int c) in Faces)
        {
            int first = points.Count;
            for (int row = 0; row <= F; row++)
            for (int i = 0; i <= row; i++)
                points.Add(
                    Arc(
                        Arc(Icosahedron[a], Icosahedron[b], row, F),
                        Arc(Icosahedron[a], Icosahedron[c], row, F),
                        i,
                        row
                    ) * 10
                );
            for (int row = 0; row < F; row++)
            for (int i = 0; i <= row; i++)
            {
                int up = first + row * (row + 1) / 2 + i,
                    down = up + row + 1;
                triangles.AddRange([up, down, down + 1]);
                if (i < row)
                    triangles.AddRange([up, down + 1, up + 1]);
            }
        }
        return Rounded(points, triangles);
    }

    /// <summary>50 rings of 22 vertices, radii 10 and 2.</summary>
    internal static TriangleMesh Torus() => SampleMeshes.Torus(10, 2, 50, 22);

    private static Vector3D Arc(Vector3D from, Vector3D to, int part, int parts)
    {
        if (part == 0)
            return from;
        double angle = Math.Acos(Vector3D.Dot(from, to)),
            share = (double)part / parts;
        return (from * Math.Sin((1 - share) * angle) + to * Math.Sin(share * angle)) * (1 / Math.Sin(angle));
    }

    /// <summary>Rounded as files are, so that corners which two faces compute apart become one.</summary>
    private static TriangleMesh Rounded(IEnumerable<Vector3D> points, IEnumerable<int> triangles) =>
        new TriangleMesh(
            [.. points.SelectMany(p => new[] { p.X, p.Y, p.Z }).Select(c => Math.Round(c, 6))],
            [.. triangles]
        ).Weld();
}
