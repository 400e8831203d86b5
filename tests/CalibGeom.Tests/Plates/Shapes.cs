using CalibGeom.Meshes;
using CalibGeom.Plates;

namespace CalibGeom.Tests.Plates;

/// <summary>Meshes made directly, so that these tests depend on nothing but the mesh.</summary>
internal static class Shapes
{
    internal static TriangleMesh Box(double x0, double y0, double z0, double x1, double y1, double z1) =>
        new(
            [x0, y0, z0, x1, y0, z0, x1, y1, z0, x0, y1, z0, x0, y0, z1, x1, y0, z1, x1, y1, z1, x0, y1, z1],
            [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7]
        );

    /// <summary>A tube of square or round section about the Z axis.</summary>
    internal static TriangleMesh Ring(double inner, double outer, double z0, double z1, int segments = 64)
    {
        var coordinates = new List<double>();
        for (int i = 0; i < segments; i++)
            foreach (
                (double radius, double z) in ((double, double)[])[(outer, z0), (outer, z1), (inner, z1), (inner, z0)]
            )
                coordinates.AddRange([
                    radius * Math.Cos(2 * Math.PI * i / segments),
                    radius * Math.Sin(2 * Math.PI * i / segments),
                    z,
                ]);
        var triangles = new List<int>();
        for (int i = 0; i < segments; i++)
        for (int k = 0; k < 4; k++)
        {
            int a = 4 * i + k,
                b = 4 * ((i + 1) % segments) + k,
                c = 4 * ((i + 1) % segments) + (k + 1) % 4,
                d = 4 * i + (k + 1) % 4;
            triangles.AddRange([a, b, c, a, c, d]);
        }
        return new TriangleMesh(coordinates.ToArray(), triangles.ToArray());
    }

    internal static PlatePart Part(params TriangleMesh[] meshes) => PlatePart.Of("part", TriangleMesh.Join(meshes));

    internal static Coupon Coupon(double width, double depth, double height) =>
        new("coupon", Box(-width / 2, -depth / 2, 0, width / 2, depth / 2, height));

    /// <summary>A coupon that is no rectangle: an L of two boxes, origin in its inner corner.</summary>
    internal static Coupon Hook(double arm, double thickness, double height) =>
        new(
            "hook",
            TriangleMesh.Join([Box(-thickness, -thickness, 0, arm, 0, height), Box(-thickness, 0, 0, 0, arm, height)])
        );
}
