using CalibGeom.TestObjects.Rules;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>
/// The neck of a loose box holds it while printing. Assumed: the film pulls on the box's full section with 10 kPa, the
/// resin pushes sideways on its face with 1 kPa, and green resin bears 5 MPa in tension and 10 MPa in bending; no
/// published table of such values is known to us. The neck counts as the round bar that fits into it.
/// </summary>
internal static class NeckStrength
{
    private const double Pull = 0.010,
        Push = 0.001,
        MostTension = 5,
        MostBending = 10;

    internal static IEnumerable<Finding> Check(BoxShape box, string subject) =>
        [
            .. Judge.AtMost(
                "neck-tension",
                subject,
                "The tension in the neck while a layer peels off the film",
                Tension(box.Frame.Outside),
                MostTension,
                "MPa",
                "Make the loose boxes smaller."
            ),
            .. Judge.AtMost(
                "neck-bending",
                subject,
                "The bending stress in the neck while the box moves through the resin",
                Bending(box),
                MostBending,
                "MPa",
                "Make the loose boxes smaller or nest.pocketDepth less."
            ),
        ];

    internal static double Tension(PerAxis outside) => Pull * outside.X * outside.Y / RoundBar.Area(Proportions.Notch);

    internal static double Bending(BoxShape box)
    {
        double height = box.Rim - Proportions.NeckHeight,
            width = Math.Max(box.Frame.Outside.X, box.Frame.Outside.Y);
        return RoundBar.BendingStress(Push * width * height, height / 2, Proportions.Notch);
    }
}
