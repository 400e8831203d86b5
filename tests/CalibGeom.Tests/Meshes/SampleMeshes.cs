using CalibGeom.Meshes;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.Meshes;

/// <summary>Meshes whose measures are known, and generators of others.</summary>
internal static class SampleMeshes
{
    internal static TriangleMesh Mesh(double[] coordinates, int[] triangles) => new(coordinates, triangles);

    internal static TriangleMesh Box(double x, double y, double z, Vector3D at = default) =>
        Mesh(
            [
                .. new double[] { 0, 0, 0, x, 0, 0, x, y, 0, 0, y, 0, 0, 0, z, x, 0, z, x, y, z, 0, y, z }.Select(
                    (c, i) =>
                        c
                        + (
                            i % 3 == 0 ? at.X
                            : i % 3 == 1 ? at.Y
                            : at.Z
                        )
                ),
            ],
            [3, 2, 1, 1, 0, 3, 4, 5, 6, 6, 7, 4, 0, 1, 5, 5, 4, 0, 1, 2, 6, 6, 5, 1, 2, 3, 7, 7, 6, 2, 3, 0, 4, 4, 7, 3]
        );

    internal static TriangleMesh Tetrahedron() =>
        Mesh([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1], [0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2]);

    /// <summary>A torus of n rings of m vertices round the z axis.</summary>
    internal static TriangleMesh Torus(double bigRadius, double smallRadius, int n, int m, double start = 0)
    {
        var coordinates = new double[3 * n * m];
        var triangles = new List<int>();
        for (int i = 0; i < n; i++)
        for (int j = 0; j < m; j++)
        {
            (double sinU, double cosU) = Math.SinCos(start + 2 * Math.PI * i / n);
            (double sinV, double cosV) = Math.SinCos(2 * Math.PI * j / m);
            int v = i * m + j;
            coordinates[3 * v] = (bigRadius + smallRadius * cosV) * cosU;
            coordinates[3 * v + 1] = (bigRadius + smallRadius * cosV) * sinU;
            coordinates[3 * v + 2] = smallRadius * sinV;
            int right = (i + 1) % n * m + j,
                up = i * m + (j + 1) % m,
                both = (i + 1) % n * m + (j + 1) % m;
            triangles.AddRange([v, right, both, v, both, up]);
        }
        return Mesh(coordinates, [.. triangles]);
    }

    internal static TriangleMesh Snapped(TriangleMesh mesh) =>
        Mesh([.. mesh.Coordinates.ToArray().Select(CalibGeom.Planar.Grid.Snap)], mesh.Triangles.ToArray());

    /// <summary>Random closed bodies on the grid: boxes, tori, and several of them side by side.</summary>
    internal static Gen<TriangleMesh> Bodies()
    {
        Gen<double> length = Gen.Choose(1, 200_000).Select(units => CalibGeom.Planar.Grid.ToMillimetres(units));
        Gen<TriangleMesh> box = from x in length from y in length from z in length select Box(x, y, z);
        Gen<TriangleMesh> torus =
            from n in Gen.Choose(5, 12)
            from m in Gen.Choose(4, 9)
            from r in Gen.Choose(2, 6)
            select Snapped(Torus(r * 3, r, n, m));
        return from count in Gen.Choose(1, 3)
            from parts in Gen.OneOf(box, torus).ArrayOf(count)
            select TriangleMesh.Join([.. parts.Select((p, i) => p.Transform(Affine3D.Shift(new(i * 64, 0, 0))))]);
    }

    /// <summary>Arbitrary indexed triangles, most of them no surface of anything.</summary>
    internal static Gen<TriangleMesh> Soups()
    {
        Gen<double> coordinate = Gen.Choose(-6, 6).Select(i => i / 8.0);
        return from n in Gen.Choose(3, 12)
            from coordinates in coordinate.ArrayOf(3 * n)
            from t in Gen.Choose(0, 14)
            from triangles in Gen.Choose(0, n - 1).ArrayOf(3 * t)
            select Mesh(coordinates, triangles);
    }
}
