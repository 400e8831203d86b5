using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Benchmarks;

/// <summary>A closed mesh of one million triangles.</summary>
internal static class MillionTriangles
{
    private const int Rings = 1000,
        Segments = 500;

    internal static TriangleMesh Torus()
    {
        var coordinates = new double[3 * Rings * Segments];
        var triangles = new List<int>();
        for (int i = 0; i < Rings; i++)
        for (int j = 0; j < Segments; j++)
        {
            int v = i * Segments + j,
                right = (i + 1) % Rings * Segments + j;
            int up = i * Segments + (j + 1) % Segments,
                both = (i + 1) % Rings * Segments + (j + 1) % Segments;
            Vertex(i, j).CopyTo(coordinates, 3 * v);
            triangles.AddRange([v, right, both, v, both, up]);
        }
        return new(coordinates, [.. triangles]);
    }

    private static double[] Vertex(int ring, int segment)
    {
        (double sinU, double cosU) = Math.SinCos(2 * Math.PI * ring / Rings);
        (double sinV, double cosV) = Math.SinCos(2 * Math.PI * segment / Segments);
        double radius = 90 + 20 * cosV;
        return [Grid.Snap(radius * cosU), Grid.Snap(radius * sinU), Grid.Snap(20 * sinV)];
    }
}
