using CalibGeom.TestObjects.Rules;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>What must hold of one box: walls, pocket, vents, neck.</summary>
internal static class BoxRules
{
    // Below the least a pocket is an error (the innermost box is then solid), below the good one worth a warning, mm:
    // walls that bend between jaws, a ledge a seated box would slip off, a pocket that few jaws go into, a vent that
    // resin closes. Common practice, no source.
    internal const double LeastWall = 0.5;

    private const double GoodWall = 0.8,
        LeastLedge = 0.3,
        GoodInside = 4.0,
        LeastVent = 0.5,
        GoodVent = 1.0;

    internal static IEnumerable<Finding> Check(NestPlan nest, int index, PartPlace place)
    {
        BoxShape box = nest.Boxes[index];
        string subject = KnownFeatures.BoxHeight(index + 1).Item;
        return
        [
            .. box.HasPocket ? Pocket(box, subject) : [Solid(subject, box)],
            .. index + 1 < nest.Boxes.Length ? NeckStrength.Check(box, subject) : [],
            .. place.Spec.Process is { } process
                ? [SizeNotes.Layers($"{subject}.height", box.Rim, process.LayerHeight)]
                : (Finding[])[],
        ];
    }

    private static IEnumerable<Finding> Pocket(BoxShape box, string subject) =>
        [
            .. Walls(box, subject),
            .. Judge.AtLeast(
                "pocket-too-small-for-jaws",
                $"{subject}.inside.x",
                "The inside width",
                box.Frame.SmallestInside,
                BoxFrame.LeastPocket,
                GoodInside,
                "mm",
                "Make the box larger or its wall thinner, so that inside jaws go in."
            ),
            .. Vents(subject, box.Well),
        ];

    private static Finding Solid(string subject, BoxShape box) =>
        box.Frame.SmallestInside < BoxFrame.LeastPocket
            ? Solid(
                subject,
                box.Frame.SmallestInside > 0
                    ? FormattableString.Invariant(
                        $"A pocket of {box.Frame.SmallestInside:0.###} mm takes no caliper's inside jaws (they need {BoxFrame.LeastPocket} mm)"
                    )
                    : FormattableString.Invariant($"Walls of {box.Frame.Wall:0.###} mm leave no pocket"),
                Math.Max(0, box.Frame.SmallestInside),
                BoxFrame.LeastPocket
            )
            : Solid(
                subject,
                FormattableString.Invariant(
                    $"Beside a pocket's vents a wall of {box.WallBesideWell:0.###} mm would be left (it needs {LeastWall} mm)"
                ),
                box.WallBesideWell,
                LeastWall
            );

    private static Finding Solid(string subject, string why, double value, double limit) =>
        Judge.Note("box-without-pocket", subject, why + ", so the innermost box is solid.", value, limit, "mm");

    /// <summary>
    /// Every pocket is vented at its lowest place: a closed pocket that faces the film is a suction cup.
    /// </summary>
    internal static IEnumerable<Finding> Vents(string subject, BoxWell well) =>
        Judge.AtLeast(
            "pocket-unvented",
            subject,
            "The width of each of the two vents",
            well.VentWidth,
            LeastVent,
            GoodVent,
            "mm",
            "Make the box wider or its wall thinner, so that the well takes vents."
        );

    private static IEnumerable<Finding> Walls(BoxShape box, string subject) =>
        [
            .. Wall(
                subject,
                "The wall beside the pocket",
                box.Frame.Wall,
                GoodWall,
                "Make nest.wall thicker, or leave more between neighbouring sizes."
            ),
            .. Wall(
                subject,
                "The wall at the cut corner",
                CutCornerWall(box.Frame),
                LeastWall,
                "Leave more between neighbouring sizes, or make nest.wall thicker."
            ),
            .. Wall(
                subject,
                "The wall beside the well",
                box.WallBesideWell,
                GoodWall,
                "Leave more between neighbouring sizes; the well must take the foot of the smaller box."
            ),
            .. Judge.AtLeast(
                "wall-too-thin",
                subject,
                "The floor around the well",
                box.Frame.SmallestInside / 2 - box.Well.Section.HalfX,
                LeastLedge,
                LeastLedge,
                "mm",
                "Make the box wider; the well must take the foot of the smaller box."
            ),
        ];

    private static IEnumerable<Finding> Wall(string subject, string what, double value, double good, string remedy) =>
        Judge.AtLeast("wall-too-thin", subject, what, value, LeastWall, good, "mm", remedy);

    private static double CutCornerWall(BoxFrame frame) =>
        ((frame.Outside.X + frame.Outside.Y - frame.Inside.X - frame.Inside.Y) / 2 - frame.Key + frame.InsideKey)
        / Math.Sqrt(2);
}
