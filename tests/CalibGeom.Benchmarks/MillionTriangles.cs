using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Benchmarks;

/// <summary>A closed mesh of one million triangles.</summary>
internal static class MillionTriangles
{
    /// <summary>A torus of about so many triangles, twice as many rings as segments; 1,000 by 500 by default.</summary>
    internal static TriangleMesh Torus(int count = 1_000_000)
    {
        int segments = (int)Math.Sqrt(count / 4.0),
            rings = 2 * segments;
        var coordinates = new double[3 * rings * segments];
        var triangles = new List<int>();
        for (int i = 0; i < rings; i++)
        for (int j = 0; j < segments; j++)
        {
            int v = i * segments + j,
                right = (i + 1) % rings * segments + j;
            int up = i * segments + (j + 1) % segments,
                both = (i + 1) % rings * segments + (j + 1) % segments;
            Vertex((double)i / rings, (double)j / segments).CopyTo(coordinates, 3 * v);
            triangles.AddRange([v, right, both, v, both, up]);
        }
        return new(coordinates, [.. triangles]);
    }

    private static double[] Vertex(double ring, double segment)
    {
        (double sinU, double cosU) = Math.SinCos(2 * Math.PI * ring);
        (double sinV, double cosV) = Math.SinCos(2 * Math.PI * segment);
        double radius = 90 + 20 * cosV;
        return [Grid.Snap(radius * cosU), Grid.Snap(radius * sinU), Grid.Snap(20 * sinV)];
    }
}
