using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Every pocket is vented at its lowest place: a closed pocket that faces the film is a suction cup.</summary>
internal sealed class VentRule : IDesignRule
{
    private const double Least = 0.5,
        Good = 1.0;

    public IEnumerable<Finding> Check(ObjectPlan plan) =>
        plan.Boxes.SelectMany((box, i) => Check($"box{i + 1}", box.Well));

    internal static IEnumerable<Finding> Check(string subject, BoxWell well) =>
        Judge.AtLeast(
            "pocket-unvented",
            subject,
            "The width of each of the two vents",
            well.VentWidth,
            Least,
            Good,
            "mm",
            "Make the box wider or its wall thinner, so that the well takes vents."
        );
}
