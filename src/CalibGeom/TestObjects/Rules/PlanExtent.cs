using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>The box round an object as it stands on the plate.</summary>
internal static class PlanExtent
{
    internal static Box3D Of(ObjectPlan plan)
    {
        Vector3D? min = null,
            max = null;
        var frame = new PrintFrame(plan.Spec.Tilt);
        foreach (Loft loft in plan.Bodies.SelectMany(b => b.Lofts))
        foreach (
            (Region region, double z) in (IReadOnlyList<(Region, double)>)
                [(loft.Bottom, loft.BottomZ), (loft.Top, loft.TopZ)]
        )
        foreach (GridPoint p in region.Outer.Points)
        {
            Vector3D v = frame.Turn(new Vector3D(p.XMillimetres, p.YMillimetres, z));
            min = min is { } a ? new(Math.Min(a.X, v.X), Math.Min(a.Y, v.Y), Math.Min(a.Z, v.Z)) : v;
            max = max is { } b ? new(Math.Max(b.X, v.X), Math.Max(b.Y, v.Y), Math.Max(b.Z, v.Z)) : v;
        }
        return new Box3D(min ?? default, max ?? default);
    }
}
