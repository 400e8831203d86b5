using System.Runtime.Intrinsics;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Plates;

/// <summary>A mesh that facets are streamed past. Safe to share between threads.</summary>
internal sealed class CouponSurface
{
    private readonly TriangleMesh mesh;
    private readonly BoxTree tree;
    private readonly Box3D bounds;

    internal CouponSurface(TriangleMesh mesh)
    {
        this.mesh = mesh;
        bounds = mesh.Bounds;
        tree = TriangleBoxes.TreeOf(mesh, [.. Enumerable.Range(0, mesh.TriangleCount)]);
    }

    /// <summary>The smaller of a squared distance and the least squared distance to any of the facets.</summary>
    internal double Nearest(ReadOnlySpan<StlFacet> facets, double best)
    {
        (Vector3D min, Vector3D max) = (bounds.Min, bounds.Max);
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
            best = tree.Least(new ToFacet(mesh, in f), best);
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

    /// <summary>The squared distance from one facet to triangles of the mesh.</summary>
    private readonly struct ToFacet : IBoxMeasure
    {
        private readonly TriangleMesh mesh;
        private readonly Vector3D a,
            b,
            c;
        private readonly Vector128<float> low,
            high;

        internal ToFacet(TriangleMesh mesh, ref readonly StlFacet f)
        {
            this.mesh = mesh;
            (a, b, c) = (new(f.AX, f.AY, f.AZ), new(f.BX, f.BY, f.BZ), new(f.CX, f.CY, f.CZ));
            Vector128<float> p = Vector128.Create(f.AX, f.AY, f.AZ, 0),
                q = Vector128.Create(f.BX, f.BY, f.BZ, 0),
                r = Vector128.Create(f.CX, f.CY, f.CZ, 0);
            low = Vector128.Min(p, Vector128.Min(q, r));
            high = Vector128.Max(p, Vector128.Max(q, r));
        }

        public double Gap(Vector128<float> boxLow, Vector128<float> boxHigh) =>
            BoxTree.SquaredGap(low, high, boxLow, boxHigh);

        public double Distance(int item)
        {
            (Vector3D p, Vector3D q, Vector3D r) = mesh.Triangle(item);
            return TriangleDistance.Squared(a, b, c, p, q, r);
        }
    }
}
