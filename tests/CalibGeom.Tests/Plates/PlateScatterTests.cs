using CalibGeom.Meshes;
using CalibGeom.Plates;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

/// <summary>Random boxes on a plate, held against a search that tries every half millimetre.</summary>
public class PlateScatterTests
{
    private const double Width = 60,
        Depth = 40,
        CouponWidth = 14,
        CouponDepth = 9,
        Gap = 1.5;

    [Property(MaxTest = 50)]
    public Property ExactShadows() => Check(PlateLayout.ExactLimit, 0);

    [Property(MaxTest = 15)]
    public Property RasterShadows() => Check(0, 2 * Width / 2048);

    private static Property Check(int exactLimit, double slack) =>
        Prop.ForAll(
            Scatters(),
            Gen.Choose(0, 2).ToArbitrary(),
            (boxes, kind) =>
            {
                PlatePart part = Part(boxes.Select(b => Box(b.X, b.Y, 0, b.X + b.W, b.Y + b.D, 5)).ToArray());
                var layout = new PlateLayout(
                    new Plate(Width, Depth),
                    [part],
                    new PlacementRules { Gap = Gap },
                    exactLimit
                );
                PlacementWish wish = kind switch
                {
                    0 => PlacementWish.NearParts,
                    1 => PlacementWish.Corner,
                    _ => PlacementWish.Near(7, -3),
                };
                PlacedCoupon? placed = layout.Place(Coupon(CouponWidth, CouponDepth, 4), wish);
                if (placed is null)
                    return !BruteForce(boxes, Gap + slack).Any();
                Box3D at = placed.Bounds;
                return boxes.All(b => Distance(b, at.Min.X, at.Min.Y, at.Max.X, at.Max.Y) >= Gap)
                    && at.Min.X >= -Width / 2 + Gap
                    && at.Max.X <= Width / 2 - Gap
                    && at.Min.Y >= -Depth / 2 + Gap
                    && at.Max.Y <= Depth / 2 - Gap
                    && PlateMerge.LeastDistance(layout) >= Gap
                    && (
                        kind != 2
                        || BruteForce(boxes, Gap + slack)
                            .All(p => double.Hypot(p.X - 7, p.Y + 3) > Away(at) - 0.03 - slack * 3)
                    );
            }
        );

    private static double Away(Box3D at) => double.Hypot((at.Min.X + at.Max.X) / 2 - 7, (at.Min.Y + at.Max.Y) / 2 + 3);

    private static IEnumerable<(double X, double Y)> BruteForce(
        (double X, double Y, double W, double D)[] boxes,
        double gap
    )
    {
        foreach ((double w, double d) in ((double, double)[])[(CouponWidth, CouponDepth), (CouponDepth, CouponWidth)])
            for (double x = -Width / 2; x <= Width / 2; x += 0.5)
            for (double y = -Depth / 2; y <= Depth / 2; y += 0.5)
            {
                (double x0, double y0, double x1, double y1) = (x - w / 2, y - d / 2, x + w / 2, y + d / 2);
                if (x0 < -Width / 2 + Gap || x1 > Width / 2 - Gap || y0 < -Depth / 2 + Gap || y1 > Depth / 2 - Gap)
                    continue;
                if (boxes.All(b => Distance(b, x0, y0, x1, y1) >= gap))
                    yield return (x, y);
            }
    }

    private static double Distance(
        (double X, double Y, double W, double D) b,
        double x0,
        double y0,
        double x1,
        double y1
    ) => double.Hypot(Math.Max(0, Math.Max(b.X - x1, x0 - b.X - b.W)), Math.Max(0, Math.Max(b.Y - y1, y0 - b.Y - b.D)));

    private static Arbitrary<(double X, double Y, double W, double D)[]> Scatters() =>
        (
            from count in Gen.Choose(1, 14)
            from boxes in Gen.ArrayOf(
                from x in Gen.Choose(-120, 100)
                from y in Gen.Choose(-80, 60)
                from w in Gen.Choose(4, 60)
                from d in Gen.Choose(4, 60)
                select (x / 4.0, y / 4.0, w / 4.0, d / 4.0),
                count
            )
            select boxes
        ).ToArbitrary();
}
