using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// How flat each part's walls hang over nothing, as printed, held against <see cref="OverhangLimits"/>: 90 degrees is
/// upright, 0 is level. Roofs of vents and slots are bridges; what becomes of them when all is tilted, the layers tell
/// (<see cref="TestObject.CheckAsPrinted"/>).
/// </summary>
internal sealed class OverhangRule : IDesignRule
{
    private const string Id = "overhang";

    /// <summary>Walls lower than this are rounding between two levels, and thinner than any layer.</summary>
    private const double LeastHeight = 0.01;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        var frame = new PrintFrame(plan.Spec.Tilt);
        return plan
            .Bodies.GroupBy(b => b.Owner)
            .Select(group => group.Select(b => (b.Subject, Angle: Flattest(b.Lofts, frame))).MinBy(b => b.Angle))
            .SelectMany(flattest => Judged(flattest.Subject, flattest.Angle));
    }

    private static IEnumerable<Finding> Judged(string subject, double angle) =>
        Judge.AtLeast(
            Id,
            subject,
            "The flattest overhang, counted from horizontal,",
            angle,
            OverhangLimits.Failing,
            OverhangLimits.Good,
            "deg",
            "Tilt or lean less."
        );

    /// <summary>
    /// The smallest angle from horizontal, in degrees, of all walls that face down; 90 when none does.
    /// </summary>
    internal static double Flattest(IReadOnlyList<Loft> lofts, PrintFrame frame)
    {
        double steepestNormal = 0;
        foreach (Loft loft in lofts)
        {
            if (loft.TopZ - loft.BottomZ < LeastHeight)
                continue;
            int sign = 1;
            foreach ((Outline bottom, Outline top) in loft.Bottom.Rings.Zip(loft.Top.Rings))
            {
                steepestNormal = Math.Min(steepestNormal, LowestNormal(bottom.Points, top.Points, loft, sign, frame));
                sign = -1;
            }
        }
        return Math.Acos(Math.Min(1, -steepestNormal)) * 180 / Math.PI;
    }

    private static double LowestNormal(
        ReadOnlySpan<GridPoint> bottom,
        ReadOnlySpan<GridPoint> top,
        Loft loft,
        int sign,
        PrintFrame frame
    )
    {
        double lowest = 0;
        for (int i = 0; i < bottom.Length; i++)
        {
            int j = (i + 1) % bottom.Length;
            Vector3D b0 = At(bottom[i], loft.BottomZ),
                b1 = At(bottom[j], loft.BottomZ),
                t0 = At(top[i], loft.TopZ),
                t1 = At(top[j], loft.TopZ);
            lowest = Math.Min(lowest, Math.Min(NormalZ(b0, b1, t1, sign, frame), NormalZ(b0, t1, t0, sign, frame)));
        }
        return lowest;
    }

    private static double NormalZ(Vector3D a, Vector3D b, Vector3D c, int sign, PrintFrame frame)
    {
        Vector3D normal = Vector3D.Cross(b - a, c - a);
        return normal.Length == 0 ? 0 : sign * frame.Turn(normal).Z / normal.Length;
    }

    private static Vector3D At(GridPoint p, double z) => new(p.XMillimetres, p.YMillimetres, z);
}
