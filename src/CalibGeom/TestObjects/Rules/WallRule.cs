using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Walls thick enough to print straight and to be held between jaws.</summary>
internal sealed class WallRule : IDesignRule
{
    private const string Id = "wall-too-thin";
    private const double Least = 0.5,
        Good = 0.8,
        LeastWeb = 0.15,
        GoodWeb = 0.25,
        LeastLedge = 0.3;

    public IEnumerable<Finding> Check(ObjectPlan plan) =>
        [.. plan.Boxes.SelectMany((b, i) => BoxWalls(b, $"box{i + 1}")), .. Web(plan)];

    private static IEnumerable<Finding> BoxWalls(BoxShape box, string subject) =>
        [
            .. Judge.AtLeast(
                Id,
                subject,
                "The wall beside the pocket",
                box.Frame.Wall,
                Least,
                Good,
                "mm",
                "Make nest.wall thicker, or leave more between neighbouring sizes."
            ),
            .. Judge.AtLeast(
                Id,
                subject,
                "The wall at the cut corner",
                CutCornerWall(box.Frame),
                Least,
                Least,
                "mm",
                "Leave more between neighbouring sizes, or make nest.wall thicker."
            ),
            .. Judge.AtLeast(
                Id,
                subject,
                "The wall beside the well",
                box.WallBesideWell,
                Least,
                Good,
                "mm",
                "Leave more between neighbouring sizes; the well must take the foot of the smaller box."
            ),
            .. Judge.AtLeast(
                Id,
                subject,
                "The floor around the well",
                box.Frame.SmallestInside / 2 - box.Well.Section.HalfX,
                LeastLedge,
                LeastLedge,
                "mm",
                "Make the box wider; the well must take the foot of the smaller box."
            ),
        ];

    private static double CutCornerWall(BoxFrame frame) =>
        ((frame.Outside.X + frame.Outside.Y - frame.Inside.X - frame.Inside.Y) / 2 - frame.Key + frame.InsideKey)
        / Math.Sqrt(2);

    private static IEnumerable<Finding> Web(ObjectPlan plan) =>
        plan.Tab is null
            ? []
            : Judge.AtLeast(
                Id,
                "squeeze.pitch",
                "The bar between two slots of the squeeze tab",
                plan.Tab.Web,
                LeastWeb,
                GoodWeb,
                "mm",
                "Make squeeze.pitch larger or squeeze.slotHeight smaller."
            );
}
