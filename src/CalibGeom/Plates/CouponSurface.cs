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

    internal CouponSurface(TriangleMesh mesh)
    {
        this.mesh = mesh;
        tree = TriangleBoxes.TreeOf(mesh, [.. Enumerable.Range(0, mesh.TriangleCount)]);
    }

    /// <summary>The smaller of a squared distance and the least squared distance to any of the facets.</summary>
    internal double Nearest(ReadOnlySpan<StlFacet> facets, double best)
    {
        for (int i = 0; i < facets.Length; i++)
        {
            ref readonly StlFacet f = ref facets[i];
            // A copy of the one before is as far away.
            if (i > 0 && f == facets[i - 1])
                continue;
            best = tree.Least(new ToFacet(mesh, in f), best);
        }
        return best;
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
