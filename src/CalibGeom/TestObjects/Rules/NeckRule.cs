using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// The neck of a loose box holds it while printing. Assumed: the film pulls on the box's full section with 10 kPa, the
/// resin pushes sideways
/// on its face with 1 kPa, and green resin bears 5 MPa in tension and 10 MPa in bending; no published table of such
/// values is known to us.
/// The neck counts as the round bar that fits into it.
/// </summary>
internal sealed class NeckRule : IDesignRule
{
    private const double Pull = 0.010,
        Push = 0.001,
        MostTension = 5,
        MostBending = 10;

    public IEnumerable<Finding> Check(ObjectPlan plan) =>
        plan
            .Boxes.SkipLast(1)
            .SelectMany(
                (box, i) =>
                    (IEnumerable<Finding>)
                        [
                            .. Judge.AtMost(
                                "neck-tension",
                                $"box{i + 1}",
                                "The tension in the neck while a layer peels off the film",
                                Tension(box.Frame.Outside),
                                MostTension,
                                "MPa",
                                "Make the loose boxes smaller."
                            ),
                            .. Judge.AtMost(
                                "neck-bending",
                                $"box{i + 1}",
                                "The bending stress in the neck while the box moves through the resin",
                                Bending(box),
                                MostBending,
                                "MPa",
                                "Make the loose boxes smaller or nest.pocketDepth less."
                            ),
                        ]
            );

    internal static double Tension(PerAxis outside) => Pull * outside.X * outside.Y / RoundBar.Area(Proportions.Notch);

    internal static double Bending(BoxShape box)
    {
        double height = box.Rim - Proportions.NeckHeight,
            width = Math.Max(box.Frame.Outside.X, box.Frame.Outside.Y);
        return RoundBar.BendingStress(Push * width * height, height / 2, Proportions.Notch);
    }
}
