using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>Tells which part of a test object a place belongs to.</summary>
internal sealed class ObjectNames
{
    // More than half a pixel of a common printer: findings about layers lie on middles of pixels.
    private const double Slack = 0.05;

    private readonly (string Name, Slab[] Slabs)[] parts;
    private readonly Affine3D toObject;

    internal ObjectNames(TestObject made, Affine3D toObject)
    {
        this.toObject = toObject;
        parts = [.. made.Plan.Bodies.Select(p => (p.Subject, p.Lofts.Select(l => new Slab(l)).ToArray()))];
    }

    /// <summary>The part with the smallest section round the place, or an empty text.</summary>
    internal string Of(Vector3D place)
    {
        Vector3D p = toObject.Apply(place);
        (string found, double least) = ("", double.PositiveInfinity);
        foreach ((string name, Slab[] slabs) in parts)
        foreach (Slab slab in slabs)
            if (slab.SectionAround(p) is { } area && area < least)
                (found, least) = (name, area);
        return found;
    }

    /// <summary>The box round a loft at any height of it.</summary>
    private sealed class Slab(Loft loft)
    {
        private readonly (Vector2D Min, Vector2D Max) bottom = BoundsOf(loft.Bottom),
            top = BoundsOf(loft.Top);

        internal double? SectionAround(Vector3D p)
        {
            if (p.Z < loft.BottomZ - Slack || p.Z > loft.TopZ + Slack)
                return null;
            double share = Math.Clamp((p.Z - loft.BottomZ) / (loft.TopZ - loft.BottomZ), 0, 1);
            Vector2D min = Between(bottom.Min, top.Min, share),
                max = Between(bottom.Max, top.Max, share);
            bool inside = p.X >= min.X - Slack && p.X <= max.X + Slack && p.Y >= min.Y - Slack && p.Y <= max.Y + Slack;
            return inside ? (max.X - min.X) * (max.Y - min.Y) : null;
        }

        private static Vector2D Between(Vector2D a, Vector2D b, double share) =>
            new(a.X + (b.X - a.X) * share, a.Y + (b.Y - a.Y) * share);

        private static (Vector2D, Vector2D) BoundsOf(Region region)
        {
            GridPoint[] points = region.Outer.Points.ToArray();
            return (
                new(points.Min(p => p.XMillimetres), points.Min(p => p.YMillimetres)),
                new(points.Max(p => p.XMillimetres), points.Max(p => p.YMillimetres))
            );
        }
    }
}
