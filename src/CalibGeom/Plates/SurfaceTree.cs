using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// A mesh in a bounding volume hierarchy that facets are streamed past. Safe to share between threads.
/// </summary>
internal sealed class SurfaceTree
{
    private const int LeafSize = 4;

    private readonly TriangleMesh mesh;
    private readonly int[] order;
    private readonly List<(Vector3D Min, Vector3D Max, int First, int Count, int Right)> nodes = [];

    internal SurfaceTree(TriangleMesh mesh)
    {
        this.mesh = mesh;
        order = Enumerable.Range(0, mesh.TriangleCount).ToArray();
        Build(0, order.Length);
    }

    /// <summary>The smaller of a squared distance and the least squared distance to any of the facets.</summary>
    internal double Nearest(ReadOnlySpan<StlFacet> facets, double best)
    {
        (Vector3D min, Vector3D max) = (nodes[0].Min, nodes[0].Max);
        for (int i = 0; i < facets.Length; i++)
        {
            ref readonly StlFacet f = ref facets[i];
            // A copy of the one before is as far away.
            if (i > 0 && f == facets[i - 1])
                continue;
            double gx = Gap(f.AX, f.BX, f.CX, min.X, max.X);
            double square = gx * gx;
            if (square >= best)
                continue;
            double gy = Gap(f.AY, f.BY, f.CY, min.Y, max.Y);
            if ((square += gy * gy) >= best)
                continue;
            double gz = Gap(f.AZ, f.BZ, f.CZ, min.Z, max.Z);
            if (square + gz * gz >= best)
                continue;
            Descend(0, new(f.AX, f.AY, f.AZ), new(f.BX, f.BY, f.BZ), new(f.CX, f.CY, f.CZ), ref best);
        }
        return best;
    }

    private static double Gap(float a, float b, float c, double min, double max)
    {
        float low = a < b ? a : b,
            high = a < b ? b : a;
        low = c < low ? c : low;
        high = c > high ? c : high;
        return low > max ? low - max
            : high < min ? min - high
            : 0;
    }

    private void Descend(int node, Vector3D a, Vector3D b, Vector3D c, ref double best)
    {
        (Vector3D min, Vector3D max, int first, int count, int right) = nodes[node];
        double gx = Gap((float)a.X, (float)b.X, (float)c.X, min.X, max.X),
            gy = Gap((float)a.Y, (float)b.Y, (float)c.Y, min.Y, max.Y);
        double gz = Gap((float)a.Z, (float)b.Z, (float)c.Z, min.Z, max.Z);
        if (gx * gx + gy * gy + gz * gz >= best)
            return;
        for (int i = first; i < first + count; i++)
        {
            (Vector3D p, Vector3D q, Vector3D r) = mesh.Triangle(order[i]);
            best = Math.Min(best, TriangleDistance.Squared(a, b, c, p, q, r));
        }
        if (count > 0)
            return;
        Descend(node + 1, a, b, c, ref best);
        Descend(right, a, b, c, ref best);
    }

    private int Build(int first, int count)
    {
        int node = nodes.Count;
        (Vector3D min, Vector3D max) = Box(first, count);
        nodes.Add((min, max, first, count <= LeafSize ? count : 0, 0));
        if (count <= LeafSize)
            return node;
        Vector3D size = max - min;
        var keys = new double[count];
        for (int i = 0; i < count; i++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(order[first + i]);
            Vector3D sum = a + b + c;
            keys[i] =
                size.X >= size.Y && size.X >= size.Z ? sum.X
                : size.Y >= size.Z ? sum.Y
                : sum.Z;
        }
        keys.AsSpan().Sort(order.AsSpan(first, count));
        Build(first, count / 2);
        int right = Build(first + count / 2, count - count / 2);
        nodes[node] = (min, max, first, 0, right);
        return node;
    }

    private (Vector3D Min, Vector3D Max) Box(int first, int count)
    {
        Vector3D min = mesh.Triangle(order[first]).A,
            max = min;
        for (int i = first; i < first + count; i++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(order[i]);
            foreach (Vector3D v in (ReadOnlySpan<Vector3D>)[a, b, c])
            {
                min = new(Math.Min(min.X, v.X), Math.Min(min.Y, v.Y), Math.Min(min.Z, v.Z));
                max = new(Math.Max(max.X, v.X), Math.Max(max.Y, v.Y), Math.Max(max.Z, v.Z));
            }
        }
        return (min, max);
    }
}
