using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>The least distance between coupons and the facets streamed past them.</summary>
internal sealed class DistanceProof
{
    private readonly CouponSurface[] coupons;
    private readonly Lock merging = new();
    private double best = double.PositiveInfinity;

    internal DistanceProof(IEnumerable<TriangleMesh> coupons) =>
        this.coupons = coupons.Select(c => new CouponSurface(c)).ToArray();

    /// <summary>mm; infinite before anything has passed.</summary>
    internal double Distance => Math.Sqrt(best);

    /// <summary>Streams a part past the coupons.</summary>
    internal void Pass(PlatePart part, FacetVisitor inOrder) =>
        FacetPipeline.Run(
            part,
            inOrder,
            () =>
                facets =>
                {
                    double seen = Volatile.Read(ref best),
                        own = seen;
                    foreach (CouponSurface coupon in coupons)
                        own = coupon.Nearest(facets, own);
                    if (own >= seen)
                        return;
                    lock (merging)
                        best = Math.Min(best, own);
                }
        );
}
